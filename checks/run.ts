// Compares the program with the outside world, writes docs/evidence.md, and exits 1 when something disagrees that is not
// listed with its reason in known-disagreements.ts, or when a measured fact is neither compared nor said why not. Usage: npm run check [-- --list] (prints every row).
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { checkKinds, type JudgedRow, judge } from './check-row.ts';
import { enduredSection, type LoadRun, type SurvivalRun } from './endured/pages.ts';
import { evidencePage, type HeldFact, type SourceList, shown } from './evidence-page.ts';
import { knownDisagreements } from './known-disagreements.ts';
import { modules } from './modules.ts';

const rows: JudgedRow[] = [];
for (const [name, load] of Object.entries(modules)) {
  const started = performance.now();
  const module = await load();
  const found = await module.cases();
  rows.push(...found.map((row) => judge(row, knownDisagreements)));
  console.log(
    `${name.padEnd(28)} ${String(found.length).padStart(4)} values  ${Math.round(performance.now() - started)} ms`,
  );
}

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));
const sources = read('./sources.json') as SourceList;
const facts = read('./measured/facts.json') as readonly HeldFact[];
const unknown = [...new Set([...rows, ...facts].map((row) => row.source).filter((key) => !(key in sources)))];
const lastRun = (path: string): unknown => (existsSync(new URL(path, import.meta.url)) ? read(path) : null);
const endured = enduredSection(
  lastRun('./endured/survival.json') as SurvivalRun | null,
  lastRun('./endured/load.json') as LoadRun | null,
);
const page = evidencePage(rows, sources, knownDisagreements, facts, endured);
writeFileSync(new URL('../docs/evidence.md', import.meta.url), page);

for (const kind of checkKinds) {
  const some = rows.filter((row) => row.kind === kind);
  const cases = new Set(some.map((row) => row.id)).size;
  if (some.length > 0) console.log(`${kind.padEnd(18)} ${cases} cases, ${some.length} values`);
}
for (const row of rows) {
  if (row.verdict === 'agrees' && !process.argv.includes('--list')) continue;
  console.log(
    `${row.verdict}: ${row.id} ${row.title}, ${row.quantity}: expected ${shown(row.expected)}, ours ${shown(row.ours)} ${row.unit}${row.reason ? ` (${row.reason})` : ''}`,
  );
}
const healed = knownDisagreements.filter(
  (one) =>
    !rows.some((row) => row.id === one.id && row.quantity === one.quantity && row.verdict === 'known disagreement'),
);
for (const one of healed)
  console.log(`listed as disagreeing but does not (or no longer exists): ${one.id} ${one.quantity}`);
for (const key of unknown) console.log(`source missing in checks/sources.json: ${key}`);
const compared = (id: string) => rows.some((row) => row.id === id);
const unexplained = facts.filter((fact) => compared(fact.id) === (fact.whyNot !== undefined));
for (const { id } of unexplained)
  console.log(
    `${id} in measured/facts.json: ${compared(id) ? 'compared, yet it says why not' : 'not compared, and no reason is given'}`,
  );
const failed = rows.filter((row) => row.verdict === 'disagrees').length;
console.log(`${rows.length - failed} passed, ${failed} failed`);
process.exitCode = failed + healed.length + unknown.length + unexplained.length > 0 ? 1 : 0;
