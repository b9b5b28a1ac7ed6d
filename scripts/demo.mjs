// What this does: starts the built program as the demonstration shop, in records of its own (data-demo/).
// Why: a setting before a command is written differently in every shell; this is one word everywhere.
// Usage: npm run demo      the settings of the program hold here too; exit code as the program's.
process.env.WARMSTEAD_DEMO = 'yes';
await import('../dist/server/main.mjs');
