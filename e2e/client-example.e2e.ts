// The client example of the documentation, run as a reader would run it, against the real program.
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningProgram, startProgram } from './support/program.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
let program: RunningProgram;

function example(file: string, password: string) {
  return spawnSync(process.execPath, [join(root, 'docs', 'client', 'example.mjs'), file], {
    cwd: root,
    encoding: 'utf8',
    env: {
      PATH: process.env.PATH,
      WARMSTEAD_URL: program.url,
      WARMSTEAD_NAME: program.owner?.name,
      WARMSTEAD_PASSWORD: password,
    },
  });
}

describe('the client example', () => {
  beforeAll(async () => {
    program = await startProgram();
  });
  afterAll(async () => {
    await program?.stop();
  });

  it('signs in and tells the verdict on a ready enclosure', () => {
    const { stdout, stderr, status } = example('data/examples/wood-1200.json', program.owner?.password ?? '');
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^Wooden vivarium.*: (holds|fails|not-known)\n/);
    expect(status).toBe(0);
  });

  it('tells why it was refused', () => {
    const wrong = example('data/examples/wood-1200.json', 'not the password');
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toMatch(/^[A-Z_]+ /);
  });
});
