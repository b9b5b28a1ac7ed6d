// What this does: everything there is to run, one after the other, with one line "N passed, N failed" at the end:
// tests, checks against outside truth, facts, and the speed comparison.
// Usage: node scripts/verify.mjs      exit code 1 = something failed.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './prepare-run.mjs';

const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
const steps = [
  { name: 'npm test', args: [join(root, 'scripts', 'test.mjs'), 'all'] },
  { name: 'npm run test:sheets', args: [join(root, 'scripts', 'test.mjs'), 'sheets'] },
  { name: 'npm run check', args: [tsx, join(root, 'checks', 'run.ts')] },
  { name: 'npm run data', args: [tsx, join(root, 'scripts', 'check-data.ts')] },
  { name: 'npm run bench', args: [tsx, join(root, 'bench', 'run.ts')] },
];

let passed = 0;
let failed = 0;
for (const { name, args } of steps) {
  console.log(`\n== ${name}`);
  if (!existsSync(args[0] === tsx ? args[1] : args[0])) {
    console.log('not there yet');
    continue;
  }
  const done = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
  process.stdout.write(done.stdout);
  // A step that counts is taken at its word; any other counts as one.
  const counted = /^(\d+) passed, (\d+) failed$/.exec(done.stdout.trimEnd().split('\n').at(-1) ?? '');
  const ok = done.status === 0;
  passed += counted === null ? Number(ok) : Number(counted[1]);
  failed += counted === null ? Number(!ok) : Math.max(Number(counted[2]), Number(!ok));
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
