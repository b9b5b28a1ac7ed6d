// What this does: fills a database as a chain of shops does in years, lets 50 desks work on it, measures answers and how
// fast readings come in, and with --write puts figures and growth into docs/load.md and docs/load-growth.svg.
// Why: "it scales" is a figure or it is nothing.
// Usage: tsx scripts/load/run.ts [--placements 100000] [--readings 50000000] [--seconds 30] [--write]
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { systemClock } from '../../src/desk/desk-context.ts';
import { startPlanner } from '../../src/desk/planner.ts';
import { type BulkReading, takeBulkReadings } from '../../src/records/bulk-readings.ts';
import { versions } from '../../src/records/versions.ts';
import { buildApp } from '../../src/server/app.ts';
import { builtIn } from '../survive/engines.ts';
import { type Answered, workDesks } from './desks.ts';
import { generate, shops } from './generate.ts';
import { growthSvg } from './growth.ts';
import { signInDesks } from './sign-in.ts';

const given = (name: string, usual: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : Number(process.argv[at + 1]);
};
const placements = given('placements', 100_000);
const readings = given('readings', 50_000_000);
const seconds = given('seconds', 30);
const sizes = [1, 2, 5, 10];
const root = join(import.meta.dirname, '..', '..');

const trial = await builtIn();
const { pool } = trial.records;
const named = async (kind: string, n: number): Promise<string> =>
  (await pool.query<{ id: string }>('select md5($1 || $2::text)::uuid as id', [kind, n])).rows[0]?.id ?? '';
const branchIds = await Promise.all(Array.from({ length: shops }, async (_, n) => await named('branch', n)));
const planner = startPlanner(1);
const clock = systemClock;
const app = await buildApp(
  {
    records: trial.records,
    branch: { branchId: branchIds[0] ?? '', branchName: 'Counter', shopName: 'Shop 0' },
    planner,
    db: trial.records.db,
    clock,
  },
  { webFolder: '/nowhere', hosts: ['*'], perMinute: 1_000_000 },
);
let cookies: readonly string[] = [];

let state = 20_260_115;
const chance = (): number => {
  state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
  return state / 4_294_967_296;
};

const runs: { readonly size: number; readonly answers: readonly Answered[] }[] = [];
let made = 0;
let fillS = 0;
try {
  for (const size of sizes) {
    const wanted = Math.round((placements * size) / 10);
    const filled = await generate(pool, made + 1, wanted, Math.round((readings * (wanted - made)) / placements));
    if (cookies.length === 0) cookies = await signInDesks(pool);
    fillS += filled.seconds;
    made = wanted;
    console.log(
      `${size}x: ${made} placements, ${Math.round((readings * size) / 10)} readings (filled in ${filled.seconds.toFixed(0)} s)`,
    );
    const perShop = Math.floor(made / shops);
    const placementIds = await Promise.all(
      Array.from(
        { length: shops },
        async (_, desk) =>
          await named('placement', desk + shops * Math.floor(chance() * (perShop - 1)) + (desk === 0 ? shops : 0)),
      ),
    );
    const asked = [
      { name: 'Today', share: 45, url: () => '/api/today' },
      { name: 'a placement', share: 45, url: (desk: number) => `/api/placements/${placementIds[desk]}` },
      { name: "inspector's export", share: 2, url: () => '/api/inspection.csv' },
      { name: 'animals', share: 8, url: () => '/api/animals' },
    ];
    // Once unmeasured, so that plans of queries and facts are there.
    for (const one of asked) {
      const first = await app.inject({ method: 'GET', url: one.url(0), headers: { cookie: cookies[0] ?? '' } });
      if (first.statusCode !== 200) console.log(`${one.name}: ${first.statusCode} ${first.body.slice(0, 300)}`);
    }
    const answers = await workDesks(app, cookies, seconds, asked, chance);
    for (const one of answers)
      console.log(
        `  ${one.name}: ${one.count} asked, ${one.failed} failed, p50 ${one.p50Ms.toFixed(0)} p95 ${one.p95Ms.toFixed(0)} p99 ${one.p99Ms.toFixed(0)} ms`,
      );
    runs.push({ size, answers });
  }
  const ingest = await measureIngest();
  const chain = await measureCommits();
  const onDisk = (
    await pool.query<{ size: string }>('select pg_size_pretty(pg_database_size(current_database())) as size')
  ).rows[0]?.size;
  console.log(
    `bulk: ${ingest.perSecond.toFixed(0)} readings/s; commits of one branch: ${chain.toFixed(0)}/s; on disk ${onDisk}`,
  );
  if (process.argv.includes('--write')) write(ingest, chain, onDisk ?? '');
} finally {
  await app.close();
  await planner.close();
  await trial.close();
}

async function measureIngest(): Promise<{ readonly count: number; readonly perSecond: number }> {
  const count = 1_000_000;
  const sourceIds = await Promise.all(Array.from({ length: 200 }, async (_, n) => await named('source', (n + 1) * 10)));
  const start = Date.UTC(2025, 2, 1);
  function* fresh(): Iterable<BulkReading> {
    for (let n = 0; n < count; n++) {
      const sourceId = sourceIds[n % sourceIds.length] ?? '';
      yield {
        sourceId,
        measuredAt: new Date(start + Math.floor(n / sourceIds.length) * 300_000),
        value: 20 + (n % 100) / 10,
      };
    }
  }
  const started = performance.now();
  const taken = await takeBulkReadings(pool, fresh(), new Date());
  if (taken.written !== count) throw new Error(`of ${count} readings ${taken.written} were new`);
  return { count, perSecond: count / ((performance.now() - started) / 1000) };
}

/** Rows of one branch that are linked into its chain, from ten hands at once. */
async function measureCommits(): Promise<number> {
  const until = performance.now() + 5000;
  let done = 0;
  const write = async (): Promise<void> => {
    while (performance.now() < until) {
      await pool.query("insert into instrument values (gen_random_uuid(), $1, 'x', now(), 'load')", [branchIds[1]]);
      done++;
    }
  };
  await Promise.all(Array.from({ length: 8 }, write));
  return done / 5;
}

function write(ingest: { readonly count: number; readonly perSecond: number }, chain: number, onDisk: string): void {
  const names = runs[0]?.answers.map((one) => one.name) ?? [];
  const table = runs.flatMap(({ size, answers }) =>
    answers.map(
      (one) =>
        `| ${size}× | ${Math.round((placements * size) / 10)} | ${Math.round((readings * size) / 10)} | ${one.name} | ${one.count} | ${one.failed} | ${one.p50Ms.toFixed(0)} | ${one.p95Ms.toFixed(0)} | ${one.p99Ms.toFixed(0)} |`,
    ),
  );
  const lines = names.map((name) => ({
    name,
    points: runs.map(({ size, answers }) => ({ x: size, y: answers.find((one) => one.name === name)?.p95Ms ?? 0 })),
  }));
  writeFileSync(
    join(root, 'docs', 'load-growth.svg'),
    growthSvg(lines, 'how much there is', 'p95 of the answers [ms]'),
  );
  const asked = placements === 100_000 && readings === 50_000_000;
  writeFileSync(
    join(root, 'docs', 'load.md'),
    `# Load

Written by \`npm run load -- --write\`. Program ${versions().program}, Node.js ${process.version}, ${cpus().length} cores for the program, the database
and the desks together (load of the machine at the end ${loadavg()[0]?.toFixed(0)}; more than ${cpus().length} means that others worked on it too, and that answers waited for them), the built-in database with its usual settings. ${shops} shops with one desk each; a desk asks, reads
for about 1.5 s and asks again, ${seconds} s at each size. Rows are made in the database (\`scripts/load/generate.ts\`), readings
every five minutes from one home in ten. Requests go to the server without a network between.
${asked ? '' : `\nThis run was made smaller than the size that is aimed at (100 000 placements, 50 000 000 readings): \`--placements ${placements} --readings ${readings}\`. The larger size was not measured.\n`}
| Size | Placements | Readings | What | Asked | Failed | p50 ms | p95 ms | p99 ms |
|---|---|---|---|---|---|---|---|---|
${table.join('\n')}

![p95 against size](load-growth.svg)

- Readings in bulk (\`takeBulkReadings\`): **${Math.round(ingest.perSecond)} a second**, ${ingest.count} at once, each written once, beside ${readings} that were there.
- Rows that are linked into the chain of one branch, eight hands at once: ${Math.round(chain)} commits a second.
- On disk at the end: ${onDisk}. Filling took ${fillS.toFixed(0)} s.

How it goes on beyond one database server: [scale.md](scale.md).
`,
  );
}
