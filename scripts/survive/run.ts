// What this does: ends, fills, fuzzes and misleads the program on purpose, counts what was lost and what was told, and
// prints it; with --write it goes to docs/survival.md. Why: "nothing is lost" is a figure or it is nothing.
// Usage: tsx scripts/survive/run.ts [--kills 200] [--fuzz 10000] [--write]      exit code 1 = something was lost or leaked.
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { versions } from '../../src/records/versions.ts';
import { appForTrials } from './app.ts';
import { jumpClock } from './clock.ts';
import { fillDisk } from './disk.ts';
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
const lines: string[] = [];
let bad = 0;

/** Chance that can be repeated: mulberry32. */
function chanceFrom(start: number): () => number {
  let state = start;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function row(what: string, found: string, good: boolean): void {
  if (!good) bad++;
  lines.push(`| ${what} | ${found} | ${good ? 'held' : '**did not hold**'} |`);
  console.log(`${good ? 'held' : 'DID NOT HOLD'}  ${what}: ${found}`);
}

async function trials(trial: Trial): Promise<void> {
  const chance = chanceFrom(seed);
  const half = Math.ceil(kills / 2);
  const urlOf = (name: string) => {
    if (trial.env.DATABASE_URL !== undefined) return trial.env.DATABASE_URL.replace('/postgres?', `/${name}?`);
    const { host, user } = trial.records.pool.options as { host: string; user: string };
    return `postgresql://${user}@/${name}?host=${encodeURIComponent(host)}`;
  };
  const programs = await killPrograms(trial.env, trial.records, half, chance);
  const shown = (done: typeof programs) =>
    `${done.kills} kills, ${done.acknowledged} acknowledged rows, ${done.missing} missing, ${done.chainBreaks} breaks of the chain (${done.seconds.toFixed(0)} s)`;
  row(
    `kill -9 of the program while it writes, ${trial.name}`,
    shown(programs),
    programs.missing + programs.chainBreaks === 0,
  );
  const database = await killDatabase(trial.records, half, chance, trial);
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
    `${clock.jumps} jumps, ${clock.wrong.length} wrong ${clock.wrong.join('; ')}`,
    clock.wrong.length === 0,
  );
}

async function onEngine(make: () => Promise<Trial | null>): Promise<void> {
  const trial = await make();
  if (trial === null) {
    lines.push(
      "| a server of the system | not run: the programs of Debian's postgresql are not installed | not known |",
    );
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
    lines.push('| disk full | not run: needs root on Linux | not known |');
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
lines.sort();

if (process.argv.includes('--write')) {
  const text = `# What it survives

Written by \`npm run survive -- --write\`. The program and its database were ended, filled and fed with nonsense on purpose;
each row says what was done, what was counted, and whether it held. Program ${versions().program}, Node.js ${process.version},
${cpus().length} cores (load of the machine ${loadavg()[0]?.toFixed(0)}), chance from one fixed start.

| What was done | What was counted | Held |
|---|---|---|
${lines.join('\n')}

Two people who change one enquiry or one placement at the same moment are in \`src/server/several-processes.test.ts\` and
\`src/records/placements.test.ts\`. A real power cut (a disk that loses what it said it had written) was not tried: both
databases run with their usual fsync, and \`kill -9\` does not show what a disk does.
`;
  writeFileSync(join(root, 'docs', 'survival.md'), text);
}
console.log(`${lines.length - bad} passed, ${bad} failed`);
process.exit(bad > 0 ? 1 : 0);
