// Every example that the help of a command and the manual page show, typed into a real shell as a person types it, in a
// folder with the files that they name; those of the records on real databases.
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { warmstead } from '../cli/testing/spawn-cli.ts';
import { wallText } from '../proving/files/stamp.ts';
import { madeLog } from '../proving/testing/made-log.ts';
import { openRecords } from '../records/open.ts';
import { fillEveryTable } from '../records/testing/every-table.ts';
import { freshDatabaseUrl } from '../records/testing/fresh-database.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const has = (program: string): boolean => spawnSync('bash', ['-c', `command -v ${program}`]).status === 0;
let folder: string;
let url: string;

const names = (await warmstead(['--help'])).out
  .split(/\nCommands:\n/)[1]!
  .split('\n')
  .flatMap((line) => /^ {2}([a-z][a-z-]*) /.exec(line)?.[1] ?? []);
const examples: readonly (readonly [string, string])[] = (
  await Promise.all(names.map(async (name) => [name, (await warmstead([name, '--help'])).out] as const))
).flatMap(([name, help]) =>
  help
    .split(/\nExamples:\n/)[1]!
    .split('\n\n')[0]!
    .split('\n')
    .map((line) => [name, line.trim()] as const),
);
/** Lines between .RS and .RE of the page. */
const ofManual = [...(await warmstead(['manual'])).out.matchAll(/^\.RS\n(.*)\n\.RE$/gm)].map((row) =>
  row[1]!.replaceAll('\\-', '-').replaceAll('\\e', '\\'),
);

const dayRows = (labels: readonly string[]): string => {
  const log = madeLog([
    { place: 'room', dayC: 18, nightC: 17 },
    { place: 'basking-surface', dayC: 31, nightC: 27 },
    { place: 'cool-air', dayC: 24, nightC: 22 },
  ]);
  const rows = log.timesS.map((t, i) => [wallText(t), ...log.channels.map((c) => String(c.values[i]))].join(','));
  return [`Time,${labels.join(',')}`, ...rows].join('\n');
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'warmstead-examples-'));
  for (const name of ['data', 'docs']) symlinkSync(join(root, name), join(folder, name));
  mkdirSync(join(folder, 'bin'));
  symlinkSync(join(root, 'bin', 'warmstead.mjs'), join(folder, 'bin', 'warmstead'));
  cpSync(join(root, 'data/examples/wood-1200.json'), join(folder, 'box.json'));
  writeFileSync(join(folder, 'log.csv'), dayRows(['Room °C', 'Temp 1', 'Cool end °C']));
  writeFileSync(join(folder, 'warm.csv'), dayRows(['Room °C', 'Temp 1', 'Cool end °C']));
  writeFileSync(join(folder, 'cool.csv'), dayRows(['Room °C', 'Temp 2', 'Cool end °C']));
  writeFileSync(join(folder, 'shelf.csv'), (await warmstead(['shelf', '--csv'])).out);
  url = await freshDatabaseUrl();
  const records = await openRecords({ databaseUrl: url, dataFolder: '' });
  if (!records.ok) throw new Error(JSON.stringify(records.faults));
  const { sourceId } = await fillEveryTable(records.value.db);
  await records.value.close();
  const readings = [
    'source,time,value',
    `${sourceId},2025-01-01T00:00:00Z,21.5`,
    `${sourceId},2025-01-01T00:05:00Z,21.7`,
  ];
  writeFileSync(join(folder, '2025-01.csv.gz'), gzipSync(readings.join('\n')));
  writeFileSync(join(folder, '2025-02.csv.gz'), gzipSync(readings.join('\n').replaceAll('2025-01', '2025-02')));
  const chain = JSON.parse((await warmstead(['verify-records', '--json'], '', { DATABASE_URL: url })).out);
  const head = chain.report.heads[0];
  writeFileSync(join(folder, 'head.txt'), `${head.branchId}:${head.number}:${head.sha256}`);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

/** An empty server, as a new one is. */
async function emptyUrl(): Promise<string> {
  const fresh = await freshDatabaseUrl();
  const client = new pg.Client({ connectionString: fresh });
  await client.connect();
  await client.query('drop schema public cascade; create schema public');
  await client.end();
  return fresh;
}

/** Types one line; places that a reader puts his own in stand for those of this test. */
async function typed(
  line: string,
): Promise<{ readonly code: number | null; readonly out: string; readonly err: string }> {
  const own = line
    .replaceAll('postgresql://localhost/shop', line.includes('postgresql://') ? await emptyUrl() : '')
    .replace(/WARMSTEAD_DATA=([\w-]+)/, (_, name: string) => `WARMSTEAD_DATA=${join(folder, name)}`);
  const namesPlace = own !== line;
  const shell = /\| source$/.test(line) ? 'fish' : 'bash';
  const strict = shell === 'bash' ? 'set -o pipefail; ' : '';
  const ended = spawnSync(
    shell,
    ['-c', `${strict}${namesPlace ? `export ${own.replace(/ warmstead /, '; warmstead ')}` : own}`],
    {
      cwd: folder,
      env: {
        PATH: `${join(folder, 'bin')}:${process.env.PATH}`,
        HOME: folder,
        ...(namesPlace ? {} : { DATABASE_URL: url }),
      },
      encoding: 'utf8',
      timeout: 110_000,
    },
  );
  return { code: ended.status, out: ended.stdout, err: ended.stderr };
}

/** A verdict is no failure of the command. */
const mayEnd = (line: string): readonly number[] => (/warmstead (?:plan|proof)\b/.test(line) ? [0, 1, 2] : [0]);
/** What a machine without a manual reader or without that shell cannot run. */
const runnable = (line: string): boolean =>
  (!/\bman -l\b/.test(line) || has('man')) && (!/\bfish\b/.test(line) || has('fish'));

async function runs(line: string): Promise<void> {
  if (line.includes('owner-code')) await anOwner();
  if (line.includes('move-records')) await builtIn();
  const ended = await typed(line);
  expect(mayEnd(line), `${line}\n${ended.err}`).toContain(ended.code);
  if (!/[>|]|source |^cp /.test(line.replace(/^.*\| (?=warmstead)/, ''))) expect(ended.out, line).not.toBe('');
}

async function anOwner(): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(
    `insert into person (id, shop_id, name, role, created_at, created_by)
     select gen_random_uuid(), shop.id, 'Name of the owner', 'owner', now(), 'test' from shop
     where not exists (select from person where role = 'owner') limit 1`,
  );
  await client.end();
}

async function builtIn(): Promise<void> {
  const filled = await openRecords({ dataFolder: join(folder, 'data-local') });
  if (!filled.ok) throw new Error(JSON.stringify(filled.faults));
  await fillEveryTable(filled.value.db);
  await filled.value.close();
}

describe('every example of a command', () => {
  test('there are some for each', () => {
    expect(names.length).toBeGreaterThan(10);
    expect(new Set(examples.map(([name]) => name)).size).toBe(names.length);
    expect(ofManual.length).toBeGreaterThan(4);
    expect(
      execFileSync('bash', ['-n'], { input: [...examples.map(([, line]) => line), ...ofManual].join('\n') }).length,
    ).toBe(0);
  });

  test.each(examples.filter(([, line]) => runnable(line)))(
    '%s: %s',
    { timeout: 120_000 },
    async (_, line) => await runs(line),
  );

  test.each(ofManual.filter(runnable))(
    'of the manual page: %s',
    { timeout: 120_000 },
    async (line) => await runs(line),
  );

  test('leaves the files that it names', () => {
    expect(readFileSync(join(folder, 'pack.pdf'), 'latin1')).toMatch(/^%PDF-/);
    expect(JSON.parse(readFileSync(join(folder, 'answer.json'), 'utf8'))).toMatchObject({ ok: true });
    expect(readFileSync(join(folder, 'day.csv'), 'utf8').split('\n').length).toBeGreaterThan(20);
    expect(readFileSync(join(folder, 'warmstead.1'), 'utf8')).toContain('.TH WARMSTEAD 1');
  });
});
