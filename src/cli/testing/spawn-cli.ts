// Starts the real program in a process of its own, for tests, as a person types it: what was built when it is up to date
// (before the tests it is), which starts three times as fast, else the sources. Leaves out: everything that is tested.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const main = fileURLToPath(new URL('../../../bin/warmstead.mjs', import.meta.url));
const root = fileURLToPath(new URL('../../../', import.meta.url));

/** Runs `warmstead ...args` in the repository's folder with nothing but PATH and the given environment. */
export function warmstead(
  args: readonly string[],
  stdin: string | Uint8Array = '',
  env: Record<string, string> = {},
): Promise<Ended> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [main, ...args], {
      cwd: root,
      env: { PATH: process.env.PATH ?? '', ...env },
    });
    const parts = { out: '', err: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      parts.out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      parts.err += text;
    });
    child.stdin.on('error', () => {});
    child.stdin.end(stdin);
    child.on('error', fail);
    child.on('close', (code) => done({ code, ...parts }));
  });
}

/** The same in a terminal of its own (`script` of util-linux), where somebody would look on.  @returns all that it wrote */
export function warmsteadWatched(args: readonly string[]): Promise<string> {
  const quoted = [process.execPath, main, ...args].map((part) => `'${part}'`).join(' ');
  return new Promise((done, fail) => {
    const child = spawn('script', ['-qec', `stty cols 100; ${quoted}`, '/dev/null'], {
      cwd: root,
      env: { PATH: process.env.PATH ?? '', TERM: 'xterm' },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let out = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.on('error', fail);
    child.on('close', () => done(out));
  });
}
