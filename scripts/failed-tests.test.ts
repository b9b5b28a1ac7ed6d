// The end of a run names what failed. The runner of tests and the shell are the real ones, the failures are planted.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
// @ts-expect-error a script without types
import { failedTests, failureList, failureText } from './failed-tests.mjs';

const root = join(import.meta.dirname, '..');

/** Runs these test files in a folder of their own. @returns the runner's report of them */
function reportOf(files: Record<string, string>): { report: object; folder: string } {
  const folder = mkdtempSync(join(root, 'node_modules', '.planted-'));
  try {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    writeFileSync(join(folder, 'vitest.config.ts'), 'export default {};');
    const out = join(folder, 'report.json');
    spawnSync(
      process.execPath,
      [
        join(root, 'node_modules', 'vitest', 'vitest.mjs'),
        'run',
        '--root',
        folder,
        '--reporter=json',
        `--outputFile.json=${out}`,
      ],
      { cwd: folder, encoding: 'utf8' },
    );
    return { report: JSON.parse(readFileSync(out, 'utf8')), folder };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const head = "import { describe, expect, test } from 'vitest';\n";

test('each failed test is named by file, name and first lines of its message; a file that does not load too', () => {
  const { report, folder } = reportOf({
    'warm.test.ts': `${head}describe('a mat', () => {
      test('is warm', () => expect(21).toBe(28));
      test('is flat', () => expect(1).toBe(1));
    });`,
    'lost.test.ts': "import './no-such-file.ts';",
    'sound.test.ts': `${head}test('holds', () => expect(1).toBe(1));`,
  });
  const said = failedTests(report, folder);
  expect(said).toHaveLength(2);
  const [lost, warm] = [...said].sort();
  expect(warm).toMatch(/^failed: warm\.test\.ts > a mat > is warm\n {8}AssertionError: expected 21 to be 28/);
  expect(lost).toMatch(/^failed: lost\.test\.ts\n {8}.*no-such-file/);
  expect(said.join('\n')).not.toMatch(/is flat|sound|\n\s+at /);
}, 60_000);

test('a long message is cut, colours are left out, and of very many failures the rest is counted', () => {
  const esc = String.fromCharCode(27);
  const long = Array.from({ length: 30 }, (_, n) => `${esc}[31mline ${n}${esc}[39m`).join('\n');
  const text = failureText('types', `${long}\n    at somewhere`);
  expect(text.split('\n')).toHaveLength(9);
  expect(text).toContain('\n        line 0\n');
  expect(text).not.toContain(esc);
  const many = failureList(Array.from({ length: 45 }, (_, n) => `failed: test ${n}`));
  expect(many.split('\n')).toHaveLength(41);
  expect(many.endsWith('\nfailed: and 5 more')).toBe(true);
});

/** The steps of .ci/run are replaced; all that counts and repeats is its own. */
function ciWith(steps: string): { code: number | null; lines: string[] } {
  const own = readFileSync(join(root, '.ci', 'run'), 'utf8');
  const cut = own.indexOf("\nstep 'system packages'");
  expect(cut).toBeGreaterThan(0);
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-ci-'));
  try {
    const file = join(folder, 'run');
    writeFileSync(file, `${own.slice(0, cut)}\n${steps}\nfinish\n`);
    const done = spawnSync('bash', [file], { encoding: 'utf8' });
    return { code: done.status, lines: done.stdout.trimEnd().split('\n') };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test('the last lines of all steps together are the failures of each, then the count', () => {
  const { code, lines } = ciWith(`
tests() { printf 'noise\\n\\nfailed: a.test.ts > is warm\\n        expected 21 to be 28\\n\\n7 passed, 1 failed\\nnpm error code 1\\n'; return 1; }
broken() { echo 'the facts are unsound'; return 3; }
step 'npm test' tests
step 'sound' true
step 'npm run data' broken
step 'quiet' printf '5 passed, 0 failed\\n'`);
  expect(code).toBe(1);
  expect(lines.slice(-6)).toEqual([
    "in 'npm test' (exit code 1):",
    'failed: a.test.ts > is warm',
    '        expected 21 to be 28',
    "in 'npm run data' (exit code 3):",
    '        the facts are unsound',
    '13 passed, 2 failed',
  ]);
});

test('a run without a failure ends with the count alone', () => {
  const { code, lines } = ciWith("step 'sound' true");
  expect(code).toBe(0);
  expect(lines.at(-1)).toBe('1 passed, 0 failed');
  expect(lines.join('\n')).not.toContain('failed:');
});
