// How fast is the simulator, as ratios in one run on one core? Bundles the measurements first, because the loader that runs
// TypeScript directly slows hot loops, then starts them kept to one core, and after them the other measurements of bench/.
// Usage: npm run bench [-- --write] [-- --solver]     --write renews docs/speed.md; --solver leaves the others out.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rolldown } from 'rolldown';

const root = new URL('..', import.meta.url).pathname;
process.chdir(root);
const folder = mkdtempSync(join(tmpdir(), 'warmstead-bench-'));
const write = process.argv.includes('--write');
let failed = false;
try {
  const bundle = await rolldown({ input: 'bench/figures.ts', platform: 'node', external: /^(?!\.|\/)/ });
  const program = join(folder, 'figures.mjs');
  await bundle.write({ file: program, format: 'esm' });
  const args = [program, folder, ...(write ? [join(root, 'docs', 'speed.md')] : [])];
  const kept = spawnSync('taskset', ['-c', '0', 'true']).status === 0;
  failed = started(kept ? ['taskset', '-c', '0', process.execPath, ...args] : [process.execPath, ...args]);
  if (!process.argv.includes('--solver'))
    for (const other of ['search.ts', 'calibration.ts'])
      if (existsSync(join('bench', other)))
        failed = started([process.execPath, '--import', 'tsx', join('bench', other)]) || failed;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed ? 1 : 0;

function started([program, ...args]: string[]): boolean {
  return spawnSync(program!, args, { stdio: 'inherit' }).status !== 0;
}
