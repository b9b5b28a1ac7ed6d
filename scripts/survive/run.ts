// What this does: ends, fills, fuzzes and misleads the program on purpose, counts what was lost and what was told, and
// prints it; with --write it goes to docs/survival.md and checks/endured/survival.json, from where
// `npm run check` takes it into docs/evidence.md. Why: "nothing is lost" is a figure or it is nothing.
// Usage: tsx scripts/survive/run.ts [--kills 200 of each kind on each engine] [--fuzz 10000] [--write]      exit code 1 = something was lost or leaked.
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { survivalPage } from '../../checks/endured/pages.ts';
import { versions } from '../../src/records/versions.ts';
import { appForTrials } from './app.ts';
import { databaseAway } from './away.ts';
import { chanceFrom } from './chance.ts';
import { jumpClock } from './clock.ts';
import { fillDisk } from './disk.ts';
import { twoEditors } from './editors.ts';
import { builtIn, ownServer, type Trial } from './engines.ts';
import { type FuzzDone, fuzzFiles, fuzzRequests } from './fuzz.ts';
import { killDatabase, killPrograms } from './kills.ts';
import { killInMigration } from './migrating.ts';

const given = (name: string, usual: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
};
const kills = given('kills', 200);
const fuzz = given('fuzz', 10_000);
const seed = 20_260_115;
const root = join(import.meta.dirname, '..', '..');
interface Row {
  readonly what: string;
  readonly found: string;
  readonly held: boolean | null;
}
const rows: Row[] = [];

function row(what: string, found: string, good: boolean): void {
  rows.push({ what, found, held: good });
  console.log(`${good ? 'held' : 'DID NOT HOLD'}  ${what}: ${found}`);
}

async function trials(trial: Trial): Promise<void> {
  const chance = chanceFrom(seed);
  const urlOf = (name: string) => {
    if (trial.env.DATABASE_URL !== undefined) return trial.env.DATABASE_URL.replace('/postgres?', `/${name}?`);
    const { host, user } = trial.records.pool.options as { host: string; user: string };
    return `postgresql://${user}@/${name}?host=${encodeURIComponent(host)}`;
  };
  const programs = await killPrograms(trial.env, trial.records, kills, chance);
  const shown = (done: typeof programs) =>
    `${done.kills} kills, ${done.acknowledged} acknowledged rows, ${done.missing} missing, ${done.chainBreaks} breaks of the chain (${done.seconds.toFixed(0)} s)`;
  row(
    `kill -9 of the program while it writes, ${trial.name}`,
    shown(programs),
    programs.missing + programs.chainBreaks === 0,
  );
  const database = await killDatabase(trial.records, kills, chance, trial);
  row(
    `kill -9 of the database and its processes, ${trial.name}`,
    `${shown(database)}, ${database.unexplained} refusals without a reason`,
    database.missing + database.chainBreaks + database.unexplained === 0,
  );
  const tries = Math.max(3, Math.round(kills / 10));
  const migrating = await killInMigration(trial.records, urlOf, tries, chance);
  row(
    `kill -9 while tables are brought up to date, ${trial.name}`,
    `${migrating.tries} kills, ${migrating.inTheMiddle} of them between two steps, ${migrating.unfinished} not finished by the next start`,
    migrating.unfinished === 0,
  );
  const clock = await jumpClock(trial.records);
  row(
    `clock set back and ahead, ${trial.name}`,
    [`${clock.jumps} jumps, ${clock.wrong.length} wrong`, ...clock.wrong].join('; '),
    clock.wrong.length === 0,
  );
  await together(trial);
  if (trial.down !== undefined) await goneAndBack(trial, trial.down);
}

async function together(trial: Trial): Promise<void> {
  const second = await trial.again();
  const editors = await twoEditors([trial.records, second], kills);
  await second.close();
  row(
    `two people at one enquiry and one placement, ${trial.name}`,
    `${editors.rounds} changes of one enquiry from two sides: ${editors.told} were told that somebody was first; ${editors.rounds} placements from two sides; ${editors.wrong.length} wrong`,
    editors.wrong.length === 0 && editors.told === editors.rounds,
  );
}

async function goneAndBack(trial: Trial, down: () => Promise<void>): Promise<void> {
  const times = Math.max(2, Math.round(kills / 20));
  const away = await databaseAway(trial.records, times, 2000, { down, up: trial.up });
  const told = Object.entries(away.told).map(([code, n]) => `${code} ${n}`);
  row(
    `the database gone for 2 s and back, ${trial.name}`,
    `${times} times, ${away.acknowledged} acknowledged, ${away.missing} missing, refused: ${told.join(', ')}, ${away.unexplained} without a reason, goes on ${away.longestBackS.toFixed(1)} s after it is back at the latest`,
    away.missing + away.unexplained === 0 && told.length > 0,
  );
}

async function onEngine(make: () => Promise<Trial | null>): Promise<void> {
  const trial = await make();
  if (trial === null) {
    const found = "not run: the programs of Debian's postgresql are not installed";
    rows.push({ what: 'a server of the system', found, held: null });
    return;
  }
  try {
    await trials(trial);
  } finally {
    await trial.close();
  }
}

async function diskFull(): Promise<void> {
  const disk = await fillDisk();
  if (disk === null) {
    rows.push({ what: 'disk full', found: 'not run: needs root on Linux', held: null });
    return;
  }
  const told = Object.entries(disk.told)
    .map(([code, n]) => `${code} ${n}`)
    .join(', ');
  row(
    'disk full (160 MB), built-in',
    `${disk.acknowledged} acknowledged, ${disk.refused} refused (${told}), ${disk.missing} missing, goes on when there is room: ${disk.goesOn ? 'yes' : 'no'}`,
    disk.missing + disk.chainBreaks === 0 && disk.goesOn && !told.includes('unknown'),
  );
}

async function nonsense(): Promise<void> {
  const trial = await appForTrials();
  const statuses = (byStatus: Readonly<Record<string, number>>) =>
    Object.entries(byStatus)
      .map(([status, n]) => `${status}: ${n}`)
      .join(', ');
  const shown = (done: FuzzDone) =>
    `${done.sent} sent (${statuses(done.byStatus)}), ${done.failed.length} failed on our side, ${done.leaks.length} told of the inside`;
  const files = await fuzzFiles(trial.app, trial.enquiryId, trial.goodFile, fuzz, seed);
  row('logger files of nonsense', shown(files), files.failed.length + files.leaks.length === 0);
  const requests = await fuzzRequests(trial.app, trial.openapi, trial.ids, fuzz, seed);
  const requestsHeld = requests.failed.length + requests.leaks.length === 0;
  row(`requests of nonsense to ${trial.doors} doors`, shown(requests), requestsHeld);
  const found = [...requests.failed, ...requests.leaks, ...files.failed, ...files.leaks];
  for (const one of found.slice(0, 20)) console.log(`  ${one}`);
  await trial.close();
}

await Promise.all([onEngine(builtIn), onEngine(ownServer), diskFull().then(nonsense)]);
rows.sort((one, two) => (one.what < two.what ? -1 : 1));
const bad = rows.filter((one) => one.held === false).length;

if (process.argv.includes('--write')) {
  const run = {
    program: versions().program,
    node: process.version,
    cores: cpus().length,
    machineLoad: Math.round(loadavg()[0] ?? 0),
    kills,
    fuzz,
    rows,
  };
  writeFileSync(join(root, 'checks', 'endured', 'survival.json'), `${JSON.stringify(run, null, 2)}\n`);
  writeFileSync(join(root, 'docs', 'survival.md'), survivalPage(run));
}
console.log(`${rows.length - bad} passed, ${bad} failed`);
process.exit(bad > 0 ? 1 : 0);
