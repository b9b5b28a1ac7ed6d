// What this does: runs every check and every test, and ends with each failure by file, name and first lines of its message,
// and with one line "N passed, N failed".
// Why one script: a step that fails must not hide what the later ones would have found.
// Usage: node scripts/test.mjs [all | unit | records | e2e | sheets | server]      exit code 1 = something failed. "server" is what
// rests on a database, with the journeys that write most to it, on a PostgreSQL of the system's own. "sheets" are the journeys
// that read every sheet, which "all" leaves to them.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { failedTests, failureList, failureText } from './failed-tests.mjs';
import { root } from './prepare-run.mjs';

const bin = (path) => join(root, 'node_modules', path);
const checks = [
  { name: 'types', args: [bin('typescript/bin/tsc'), '--noEmit', '-p', 'tsconfig.json'] },
  { name: 'types of the pure rooms', args: [bin('typescript/bin/tsc'), '--noEmit', '-p', 'tsconfig.pure.json'] },
  { name: 'form and lint', args: [bin('@biomejs/biome/bin/biome'), 'check', '--error-on-warnings'] },
  { name: 'rooms', args: [join(root, 'scripts', 'check-rooms.mjs')] },
];
const projectsOf = {
  all: ['unit', 'records', 'e2e'],
  unit: ['unit', 'records'],
  records: ['records'],
  e2e: ['e2e'],
  sheets: ['e2e'],
  server: ['records', 'e2e'],
};
const journeysOnServer = ['release', 'animal-day', 'aftercare', 'accounts', 'proof', 'several-processes'];
const filesOf = { server: ['src/', ...journeysOnServer.map((name) => `e2e/${name}.e2e.ts`)] };

const what = process.argv[2] ?? 'all';
if (!(what in projectsOf)) throw new Error(`"${what}" is none of ${Object.keys(projectsOf).join(', ')}`);
const total = { passed: 0, failed: 0, skipped: 0 };
const failures = [];
if (what === 'all') process.env.WARMSTEAD_JOURNEYS = 'work';
if (what === 'sheets') process.env.WARMSTEAD_JOURNEYS = 'sheets';
if (what === 'all') for (const check of checks) await runCheck(check);
if (what === 'server') process.env.WARMSTEAD_TEST_ENGINE = 'server';
await runTests(projectsOf[what], filesOf[what] ?? []);

console.log('');
if (total.skipped > 0) console.log(`${total.skipped} skipped (each is named above with its reason)`);
if (failures.length > 0) console.log(failureList(failures));
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;

async function runCheck({ name, args }) {
  const started = performance.now();
  const heard = [];
  const ok = (await run(args, heard)) === 0;
  console.log(`${ok ? 'passed' : 'FAILED'}: ${name} (${((performance.now() - started) / 1000).toFixed(1)} s)`);
  count(ok ? 1 : 0, ok ? [] : [failureText(name, heard.join(''))]);
}

/** Vitest's own count; a file that does not load is a failure, and so is an error outside every test. */
async function runTests(projects, files) {
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-count-'));
  const file = join(folder, 'tests.json');
  const wanted = projects.flatMap((project) => ['--project', project]);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const code = await run([bin('vitest/vitest.mjs'), 'run', ...files, ...wanted, ...reporters]);
  const report = readReport(file);
  rmSync(folder, { recursive: true });
  const named = [...report.failures];
  const tests = `tests (${projects.join(', ')})`;
  if (report.passed + named.length === 0) named.push(failureText(`${tests}: none ran`, ''));
  else if (code !== 0 && named.length === 0) named.push(failureText(`${tests}: see "Unhandled" above`, ''));
  total.skipped += report.skipped;
  for (const name of report.skippedNames) console.log(`skipped: ${name}`);
  count(report.passed, named);
}

function readReport(file) {
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    const all = report.testResults.flatMap((suite) => suite.assertionResults);
    const skipped = all.filter((one) => ['skipped', 'pending', 'todo', 'disabled'].includes(one.status));
    return {
      passed: report.numPassedTests,
      failures: failedTests(report, root),
      skipped: skipped.length,
      skippedNames: skipped.map((one) => one.fullName),
    };
  } catch {
    return { passed: 0, failures: [], skipped: 0, skippedNames: [] };
  }
}

function count(passed, failed) {
  total.passed += passed;
  total.failed += failed.length;
  failures.push(...failed);
}

/** @param heard  takes what it says, beside the screen; without it all goes to the screen alone */
function run(args, heard) {
  return new Promise((done) => {
    const way = heard === undefined ? 'inherit' : 'pipe';
    const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', way, way] });
    for (const [from, to] of [
      [child.stdout, process.stdout],
      [child.stderr, process.stderr],
    ]) {
      from?.on('data', (chunk) => {
        heard.push(String(chunk));
        to.write(chunk);
      });
    }
    child.on('error', () => done(1));
    child.on('close', (code) => done(code ?? 1));
  });
}
