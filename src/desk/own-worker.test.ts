import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { afterAll, expect, it } from 'vitest';
import { ownWorker } from './own-worker.ts';

const before = process.cwd();
afterAll(() => process.chdir(before));

it('a worker answers from the sources too, whichever folder the program is called in', async () => {
  process.chdir(tmpdir());
  const worker = ownWorker('plan');
  try {
    const answered = once(worker, 'message');
    worker.postMessage({});
    const [reply] = await answered;
    expect(reply.result.ok).toBe(false);
    expect(reply.result.faults.length).toBeGreaterThan(0);
  } finally {
    await worker.terminate();
  }
});
