// Runs the command shown in README.md and writes its real output below it.
// Why: an example that is typed by hand is wrong after the next change of the model. Exit code 0; with --check 1
// when the output has changed.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const page = fileURLToPath(new URL('../README.md', import.meta.url));
const block = /(```console\n\$ )(npx warmstead|sed )([^\n]*\n)([\s\S]*?)(```)/;

const text = readFileSync(page, 'utf8');
const found = block.exec(text);
if (found === null) throw new Error('README.md has lost its worked example');
const command = `${found[2]}${found[3]}`.trim();
const env = { ...process.env, NO_COLOR: '1', COLUMNS: '80', LANG: 'C' };
const { stdout, stderr, status } = spawnSync('bash', ['-c', command], { cwd: root, env, encoding: 'utf8' });
if (status === null || status > 2) throw new Error(`${command} ended with ${status}: ${stderr}`);
const written = text.replace(block, (_, open, first, rest, _old, close) => `${open}${first}${rest}${stdout}${close}`);
if (!process.argv.includes('--check')) writeFileSync(page, written);
else if (written !== text) {
  console.error('README.md: the worked example has changed; run npx tsx scripts/write-readme-example.ts');
  process.exitCode = 1;
}
