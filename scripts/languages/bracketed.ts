// A language made from the English for tests, every word of it in brackets, with the plural forms of Polish: what stands
// on a sheet without brackets was not said by the file. Leaves out units and signs, which no language changes.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withTextChanged } from '../../src/shared/pattern.ts';

/** Written alike in every language. */
const signs = new Set([
  'C',
  'F',
  'K',
  'W',
  'kW',
  'kWh',
  'Wh',
  'Pa',
  'cm',
  'mm',
  'm',
  'g',
  'kg',
  'oz',
  'in',
  'ft',
  'h',
  'min',
  's',
  'lx',
]);

const word = /\p{L}[\p{L}\p{M}’'-]*/gu;
/** Behind a blank, a number or a degree sign it is a unit; "in" is a word of English as well. */
const isSign = (text: string, at: number, found: string): boolean =>
  signs.has(found) && found !== 'in' && (/(?:^ ?|[\d°%/]\s?)$/.test(text.slice(0, at)) || /^[A-Z]/.test(found));

const bracketedText = (text: string): string =>
  text.replace(word, (found, at: number) => (isSign(text, at, found) ? found : `[${found}]`));

/** The forms "few" and "many" that English has not, told apart by a word of their own. */
const withForms = (pattern: string): string =>
  pattern.replace(
    /other \{([^{}]*#[^{}]*)\}\}/g,
    (_, other: string) => `few {${other} [few]} many {${other} [many]} other {${other}}}`,
  );

export const bracketed = (pattern: string): string => withForms(withTextChanged(pattern, bracketedText));

/** Writes languages/pl.json into a folder of records. */
export function writeBracketed(ownFolder: string, every: Readonly<Record<string, string>>): void {
  const words = Object.fromEntries(Object.entries(every).map(([key, english]) => [key, [english, bracketed(english)]]));
  mkdirSync(join(ownFolder, 'languages'), { recursive: true });
  writeFileSync(join(ownFolder, 'languages', 'pl.json'), JSON.stringify({ words }));
}

/** Words outside of brackets, but for those that may stand there. */
export function unbracketed(text: string, may: RegExp): readonly string[] {
  const rest = text.replace(/\[\p{L}[\p{L}\p{M}’'-]*\]/gu, ' ').replace(may, ' ');
  const words = rest.match(/\p{L}[\p{L}\p{M}’'-]+/gu) ?? [];
  return words.filter((one) => !signs.has(one));
}
