// Checks every fact in data/: form, source, unit, possible range, order, links; names each bad one and counts the rest.
// Usage: tsx scripts/check-data.ts [folder]     exit 1 when anything is malformed or unsourced; amber rules only warn.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readMarkCounts } from '../src/husbandry/fact-counts.ts';
import { staleRules } from '../src/husbandry/law-checks.ts';
import { loadFacts, readRawFacts } from '../src/records/facts.ts';
import { languageFiles, shippedLanguages } from '../src/records/languages.ts';
import { countLanguage } from './languages/count-language.ts';
import { everyText } from './languages/every-text.ts';

const folder = process.argv[2] ?? join(fileURLToPath(new URL('.', import.meta.url)), '..', 'data');
const { facts, faults } = loadFacts(folder);
const today = new Date().toISOString().slice(0, 10);

for (const fault of faults)
  console.log(`BAD    ${fault.field}: ${fault.say} Got ${fault.got}; allowed: ${fault.allowed}.`);
for (const rule of staleRules(facts.law, today))
  console.log(`AMBER  law.json: ${rule.id}: to be looked at again since ${rule.reviewBy}`);

const sizes = {
  sources: Object.keys(facts.sources).length,
  species: Object.keys(facts.species).length,
  materials: Object.keys(facts.materials).length,
  heaters: Object.keys(facts.heaters).length,
  thermostats: Object.keys(facts.thermostats).length,
  substrates: Object.keys(facts.substrates).length,
  prey: Object.keys(facts.prey).length,
  standards: Object.keys(facts.standards).length,
  law: facts.law.length,
  cautions: facts.cautions.length,
  faults: facts.faultCases.length,
};
console.log(
  Object.entries(sizes)
    .map(([name, count]) => `${count} ${name}`)
    .join(', '),
);
for (const [file, count] of Object.entries(readMarkCounts(readRawFacts(folder).raw)))
  console.log(
    `${file}: ${count.page} read on a page, ${count.memory} from memory or common practice, ${count.measured} measured`,
  );
const every = everyText();
for (const { code, pairs } of languageFiles(shippedLanguages()).files) {
  const { said, open, changed, wrong } = countLanguage(every, pairs);
  console.log(
    `languages/${code}.json: ${said} sentences said, ${open.length} open, ${changed.length} of a changed English, ${wrong.length} with wrong blanks`,
  );
}
console.log(faults.length === 0 ? 'data: sound' : `data: ${faults.length} complaints`);
process.exitCode = faults.length === 0 ? 0 : 1;
