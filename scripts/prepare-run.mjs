// What this does: runs another program for the prepare scripts and tells where the project lies.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..');

/** Runs to the end; output goes to our own. Rejects with `why` when it fails. */
export function run(command, args, why, options = {}) {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], ...options });
    child.on('error', (error) => fail(new Error(`${why}\n${error.message}`)));
    child.on('exit', (code, signal) =>
      code === 0 ? done() : fail(new Error(`${why} (${signal ?? `exit code ${code}`})`)),
    );
  });
}

/** Runs to the end without a word; what it wrote is shown only when it fails. */
export function runQuietly(command, args, why) {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (text) => {
        said += text;
      });
    }
    child.on('error', (error) => fail(new Error(`${why}\n${error.message}`)));
    child.on('close', (code) => (code === 0 ? done() : fail(new Error(`${said}\n${why}`))));
  });
}

/** npm in the version that started us, else the one on the path. */
export function runNpm(args, why) {
  const npm = process.env.npm_execpath;
  if (npm?.endsWith('.js') || npm?.endsWith('.cjs')) return run(process.execPath, [npm, ...args], why);
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, why, { shell: process.platform === 'win32' });
}
