// What this does: the laws of every box over thousands of random boxes, and what the kit search says over random homes and
// shelves; minutes, not seconds. Exit code 1 = a law broken.
// Usage: npm run soak [times]      times as many boxes as in npm test; default 10.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const times = process.argv[2] ?? '10';
const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const env = { ...process.env, WARMSTEAD_SOAK: times };
const args = [vitest, 'run', '--project', 'unit', 'src/physics/box-laws', 'src/planning/choice-laws'];
process.exitCode = spawnSync(process.execPath, args, { env, stdio: 'inherit' }).status ?? 1;
