// What stands in the blanks of a need's sentence, in a language other than English: by the code of the blank.
import { bookIn, type Language } from '../../shared/languages.ts';
import { filledPattern, numbered } from '../../shared/pattern.ts';
import type { Told } from '../coded.ts';
import type { FactWords } from '../fact-words.ts';
import { namesDe } from './names-de.ts';
import { type BlankNames, namesEn } from './names-en.ts';

type Table = Exclude<
  keyof BlankNames,
  'or' | 'and' | 'side' | 'sumOf' | 'round' | 'floorOf' | 'long' | 'deep' | 'high'
>;

/** Sentence and blank whose word has a translation of its own. */
const wordBlanks: Readonly<Record<string, Table>> = {
  'hides.add.0': 'ends',
  'thermometers.missing.0': 'places',
  'thermometers.dial.0': 'places',
  'thermometers.good.0': 'places',
  'thermometers.fix.0': 'places',
  'substrate.clash.1': 'zones',
  'space.tolerated.0': 'sides',
  'probe.placed.0': 'probePlaces',
  'climate.cold.1': 'warmPlaces',
  'climate.warm.1': 'warmPlaces',
  'climate.found.1': 'units',
  'climate.foundOne.1': 'units',
  'climate.band.2': 'units',
};

const filled = (pattern: string, ...blanks: readonly string[]): string =>
  filledPattern(pattern, numbered(blanks), 'en');

const joined = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : filled(last, words.slice(0, -1).join(', '), words.at(-1) ?? '');

function namesOf(ids: string, names: Readonly<Record<string, string>>, or: string): string | null {
  const found = ids.split(' ').map((id) => names[id]);
  return found.some((name) => name === undefined) ? null : joined(found as string[], or);
}

const listOf = (ids: string, names: Readonly<Record<string, string>>): string =>
  ids
    .split(' ')
    .map((id) => names[id] ?? id)
    .join(', ');

/** "length|120 cm|150 cm;…" */
const shortSides = (written: string, book: BlankNames): string =>
  joined(
    written.split(';').map((one) => {
      const [side = '', found = '', asked = ''] = one.split('|');
      return filled(book.side, book.sides[side] ?? side, found, asked);
    }),
    book.and,
  );

const cmOf = (m: string): string => `${Number((Number(m) * 100).toFixed(1))} cm`;

/** Length, width, height [m], floor [m²], way round and sum [m], empty where nothing is asked. */
function asked(parts: string, book: BlankNames): string {
  const [length, width, height, floor, round, sum] = parts.split('|');
  const box = [length, width, height].filter(Boolean).map((m) => cmOf(m!));
  const alone = [
    length ? filled(book.long, cmOf(length)) : '',
    width ? filled(book.deep, cmOf(width)) : '',
    height ? filled(book.high, cmOf(height)) : '',
  ];
  const sizes = length && box.length > 1 ? [box.join(' × ')] : alone.filter(Boolean);
  const floorM2 = Number(floor);
  return joined(
    [
      sum ? filled(book.sumOf, cmOf(sum)) : '',
      round ? filled(book.round, cmOf(round)) : '',
      floor ? filled(book.floorOf, `${floorM2.toFixed(floorM2 < 0.1 ? 3 : 2)} m²`) : '',
      ...sizes,
    ].filter(Boolean),
    book.and,
  );
}

/** A kind of heater; null when it is none. */
export const heaterNameIn = (kind: string, language: Language): string | null =>
  bookIn<BlankNames>('name', language, { en: namesEn, de: namesDe }).heaters[kind] ?? null;

/** A kind of thermostat; null when it is none. */
export const thermostatNameIn = (control: string, language: Language): string | null =>
  bookIn<BlankNames>('name', language, { en: namesEn, de: namesDe }).thermostats[control] ?? null;

/** A name or a blank by its code; null when it has none. */
export function nameIn({ code, blanks }: Told, words: FactWords, language: Language): string | null {
  const [first, , third] = blanks.map(String);
  if (first === undefined) return null;
  const book = bookIn<BlankNames>('name', language, { en: namesEn, de: namesDe });
  if (code === 'name.heater') return book.heaters[first] === undefined ? null : `${book.heaters[first]} (${third})`;
  if (code === 'name.thermostat' || code === 'name.thermostats') return namesOf(first, book.thermostats, book.or);
  if (code === 'name.substrate' || code === 'name.substrates') return namesOf(first, book.substrates, book.or);
  // A text of data/ has its words there; what a shop called something stays as it is.
  if (code === 'name.fact') return words[first] ?? first;
  if (code === 'name.thermometers') return listOf(first, book.thermometers);
  if (code === 'name.asked') return asked(first, book);
  if (code === 'space.why.1') return shortSides(first, book);
  const table = wordBlanks[code];
  return table === undefined ? null : (book[table][first] ?? null);
}
