// How fast is the simulator, as ratios in one run on one core? Bundles the measurements first, because the loader that runs
// TypeScript directly slows hot loops, then starts them: the search on all cores, the others kept to one.
// Usage: npm run bench [-- --write] [-- --solver]     --write renews docs/speed.md; --solver leaves the others out.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rolldown } from 'rolldown';

const root = new URL('..', import.meta.url).pathname;
process.chdir(root);
const searchBoxes = ['wood-1200', 'pvc-1200', 'glass-mesh-900'];
const folder = mkdtempSync(join(tmpdir(), 'warmstead-bench-'));
const write = process.argv.includes('--write');
let failed = false;
try {
  const program = join(folder, 'figures.mjs');
  await bundled('bench/figures.ts', program);
  if (!process.argv.includes('--solver')) failed = await searches();
  const args = [program, folder, ...(write ? [join(root, 'docs', 'speed.md')] : [])];
  const kept = spawnSync('taskset', ['-c', '0', 'true']).status === 0;
  failed = started(kept ? ['taskset', '-c', '0', process.execPath, ...args] : [process.execPath, ...args]) || failed;
  if (!process.argv.includes('--solver'))
    failed = started([process.execPath, '--import', 'tsx', join('bench', 'calibration.ts')]) || failed;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed ? 1 : 0;

async function bundled(input: string, file: string): Promise<void> {
  const bundle = await rolldown({ input, platform: 'node', external: /^(?!\.|\/)/ });
  await bundle.write({ file, format: 'esm' });
}

/** Each box in a process of its own, beside the built program, whose worker solves. */
async function searches(): Promise<boolean> {
  if (started([process.execPath, 'scripts/prepare.mjs', 'build'])) return true;
  const search = join(root, 'dist', 'bench', 'search.mjs');
  await bundled('bench/search.ts', search);
  return searchBoxes
    .map((box) => started([process.execPath, search, '--box', box, '--keep', join(folder, `search-${box}.json`)]))
    .some(Boolean);
}

function started([program, ...args]: string[]): boolean {
  return spawnSync(program!, args, { stdio: 'inherit' }).status !== 0;
}
