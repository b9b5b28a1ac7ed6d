// Writes data/languages/xx.json with every sentence of the program, for a translator to fill in, and says how far it is.
// What is said already stays. Usage: tsx scripts/write-language.ts CODE | (nothing: counts those there are)
// exit 1 = a sentence cannot be used, or the English of one has changed; open ones are counted, they are said in English.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { languageFiles, languageFrom, shippedLanguages } from '../src/records/languages.ts';
import { ownLanguages } from '../src/shared/languages.ts';
import { countLanguage, withEveryKey } from './languages/count-language.ts';
import { everyText } from './languages/every-text.ts';

const every = everyText();
const folder = shippedLanguages();
const [code] = process.argv.slice(2);

if (code !== undefined) writeFile(code);
const { files, unreadable } = languageFiles(folder);
for (const file of unreadable) console.log(`BAD    ${file}: no { "words": { … } } in JSON`);
for (const { code: one, pairs } of files) {
  const { said, open, changed, wrong, unknown } = countLanguage(every, pairs);
  console.log(`${one}: ${said} of ${Object.keys(every).length} said, ${open.length} open`);
  for (const key of changed) console.log(`CHANGED  ${key}\n    was  ${pairs[key]![0]}\n    is   ${every[key]!}`);
  for (const key of wrong) console.log(`BLANKS   ${key}\n    has  ${pairs[key]![1]}\n    for  ${every[key]!}`);
  for (const key of unknown) console.log(`UNKNOWN  ${key}`);
  if (changed.length + wrong.length > 0) process.exitCode = 1;
}
if (unreadable.length > 0) process.exitCode = 1;
if (files.length === 0 && unreadable.length === 0)
  console.log('No language beside English and German. One is begun by: npm run language -- fr');

function writeFile(language: string): void {
  if (!/^[a-z]{2}$/.test(language) || ownLanguages.includes(language)) {
    console.log(`"${language}" is not a two-letter code (ISO 639-1) other than ${ownLanguages.join(' and ')}.`);
    process.exit(1);
  }
  const path = join(folder, `${language}.json`);
  const before = existsSync(path) ? languageFrom(language, readFileSync(path, 'utf8')) : null;
  if (existsSync(path) && before === null) {
    console.log(`${path} is not readable and was left as it is.`);
    process.exit(1);
  }
  const words = withEveryKey(every, before?.pairs ?? {});
  const rows = Object.entries(words).map(([key, pair]) => `    ${JSON.stringify(key)}: ${JSON.stringify(pair)}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path, `{\n  "words": {\n${rows.join(',\n')}\n  }\n}\n`);
  console.log(`${path}: each row is [English, what is said instead]; "" is said in English.`);
}
