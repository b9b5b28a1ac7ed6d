// Where does a worker's program come from? The built one beside the built program, else the sources through the loader that
// runs us. Leaves out: what the workers do and how many there are.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { programRoot } from '../records/root.ts';

/** @param name  "plan": dist/worker/plan.mjs, or src/desk/plan-worker.ts */
export function ownWorker(name: 'plan' | 'proof' | 'kit-search'): Worker {
  const root = programRoot();
  const built = join(root, 'dist', 'worker', `${name}.mjs`);
  if (!fileURLToPath(import.meta.url).endsWith('.ts') && existsSync(built)) return new Worker(built);
  // Found from this file: the folder in which the program is called may be any other. The loader marks what it loads.
  const loader = import.meta.resolve('tsx/esm/api').replace(/\?.*/, '');
  const source = pathToFileURL(join(root, 'src', 'desk', `${name}-worker.ts`)).href;
  const start = `import(${JSON.stringify(loader)}).then(({ register }) => { register(); return import(${JSON.stringify(source)}); });`;
  return new Worker(start, { eval: true });
}
