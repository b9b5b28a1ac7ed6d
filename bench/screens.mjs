// What this does: measures the first screen in the real browser on a processor slowed down four times (largest paint,
// answers to a touch) and writes dist/screens.txt.
// Why apart from the tests: times are compared with a fixed piece of work done in the same page, never with a clock alone.
// Usage: node bench/screens.mjs [--budget]      with --budget exit code 1 = over the budget twice.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const budget = process.argv.includes('--budget');
const child = spawn(
  process.execPath,
  [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--project', 'e2e', 'e2e/first-screen.e2e.ts', '-t', 'budget'],
  {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, WARMSTEAD_BENCH: 'screens', ...(budget ? { WARMSTEAD_BUDGET: 'yes' } : {}) },
  },
);
child.on('exit', (code) => {
  process.exitCode = code ?? 1;
});
