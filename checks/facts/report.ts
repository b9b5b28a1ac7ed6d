// Prints which kind of witness stands for how many values of data/; with --freeze first writes our own values down where
// nobody else notices a slip. Usage: tsx checks/facts/report.ts [--freeze]     exit 1 when a slip goes unnoticed.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readRawFacts } from '../../src/records/facts.ts';
import type { Leaf } from './leaves.ts';
import { noticedSlips, sharesOf } from './slips.ts';
import { courtOf, witnessKinds, witnessWords } from './witnesses.ts';

const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
if (process.argv.includes('--freeze')) {
  const frozen: Record<string, Record<string, Leaf>> = {};
  for (const { place, by } of noticedSlips(raw, courtOf(raw, {}))) {
    if (by !== null) continue;
    frozen[place.file] ??= {};
    (frozen[place.file] as Record<string, Leaf>)[place.path.slice(place.file.length + 1)] = place.value;
  }
  writeFileSync(new URL('./frozen.json', import.meta.url), `${JSON.stringify(frozen, null, 1)}\n`);
}
const noticed = noticedSlips(raw);
const survivors = noticed.filter(({ by }) => by === null);
for (const { place, unnoticed } of survivors) console.log(`UNNOTICED  ${place.path}: ${place.value} -> ${unnoticed}`);
for (const { table, values, by } of sharesOf(noticed).toSorted((a, b) => b.values - a.values)) {
  const parts = witnessKinds.filter((kind) => by[kind]).map((kind) => `${kind} ${by[kind]}`);
  console.log(`${table.padEnd(14)} ${String(values).padStart(5)}  ${parts.join(', ')}`);
}
for (const kind of witnessKinds) console.log(`${kind.padEnd(16)} ${witnessWords[kind]}`);
console.log(survivors.length === 0 ? 'every slip is noticed' : `${survivors.length} slips go unnoticed`);
process.exitCode = survivors.length === 0 ? 0 : 1;
