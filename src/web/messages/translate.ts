// Finds the words for a key in the chosen language and fills in its blanks. English and German have a book here; any
// further language is one file that the shop's computer reads (data/languages/xx.json) and hands out. Only the language in
// use is fetched. Leaves out numbers and units: they come written already (settings/measure.ts).
import { type FactWords, taughtFacts } from '../../husbandry/fact-words.ts';
import { ownLanguages, teachLanguage, type Words } from '../../shared/languages.ts';
import { type Blanks, filledPattern } from '../../shared/pattern.ts';
import type { MessageBook, MessageKey } from './en.ts';

export type Translate = (key: MessageKey, blanks?: Blanks) => string;

type Book = Readonly<Record<string, string>>;

const files = import.meta.glob<Readonly<Record<string, Book>>>('./??.ts');
const factFiles = import.meta.glob<FactWords>('../../../data/words/??.json', { import: 'default' });

const loaded = new Map<string, MessageBook>();
const loadedFacts = new Map<string, FactWords>();
let known: readonly string[] = [...ownLanguages].sort();
let asked: Promise<readonly string[]> | null = null;

/** Codes of the languages known so far, e.g. ["de", "en"]. */
export const knownLanguages = (): readonly string[] => known;

/** Asks the shop's computer which languages files brought; those of the books where it cannot be reached. */
export function findLanguages(): Promise<readonly string[]> {
  asked ??= fetched<readonly string[]>('/api/languages')
    .then((codes) => {
      known = [...codes].sort();
      return known;
    })
    .catch(() => {
      asked = null;
      return known;
    });
  return asked;
}

async function fetched<T>(path: string): Promise<T> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return (await response.json()) as T;
}

const bookOf = async (code: string): Promise<MessageBook> =>
  ((await files[`./${code}.ts`]?.())?.[code] ?? {}) as MessageBook;

/** The English book with what a file says instead, and its words for refusals as "fault.CODE". */
export function taughtBook(english: MessageBook, words: Words): MessageBook {
  const own = Object.entries(words).flatMap(([key, said]) => {
    if (key.startsWith('web:')) return [[key.slice('web:'.length), said]];
    return key.startsWith('fault:') ? [[`fault.${key.slice('fault:'.length)}`, said]] : [];
  });
  return { ...english, ...Object.fromEntries(own) };
}

/** Fetches the words of a language once; one that cannot be had is English. Must be done before translateFor. */
export async function loadBook(code: string): Promise<void> {
  if (loaded.has(code)) return;
  if (ownLanguages.includes(code)) {
    const [book, facts] = await Promise.all([bookOf(code), factFiles[`../../../data/words/${code}.json`]?.()]);
    loadedFacts.set(code, { ...facts });
    loaded.set(code, book);
    return;
  }
  const [english, words] = await Promise.all([
    bookOf('en'),
    fetched<Words>(`/api/languages/${code}`).catch((): Words => ({})),
  ]);
  teachLanguage(code, words);
  loadedFacts.set(code, taughtFacts(words));
  loaded.set(code, taughtBook(english, words));
}

/** The texts of data/ in a language. Empty for English. */
export const factWordsOf = (code: string): FactWords => loadedFacts.get(code) ?? {};

export const isLoaded = (code: string): boolean => loaded.has(code);

/** @param prose writes the quantities that stand in the words as this person reads them; blanks come written already */
export function translateFor(code: string, prose: ((text: string) => string) | null = null): Translate {
  const book = loaded.get(code);
  if (book === undefined) throw new Error(`the words of "${code}" were not loaded`);
  const known = new Map<MessageKey, string>();
  const patternOf = (key: MessageKey): string => {
    if (prose === null || book[key] === undefined) return book[key];
    const pattern = known.get(key) ?? prose(book[key]);
    known.set(key, pattern);
    return pattern;
  };
  return (key, blanks) => (blanks ? filledPattern(patternOf(key), blanks, code) : patternOf(key));
}

/** True when the key stands in the books: for keys made from an id that comes from data. */
export function isMessageKey(key: string): key is MessageKey {
  for (const book of loaded.values()) return key in book;
  return false;
}

/** A word that only some languages have, such as the sentence for a fault's code; null when this one has none. */
export function wordOf(code: string, key: string): string | null {
  const book = loaded.get(code) as Book | undefined;
  return book !== undefined && Object.hasOwn(book, key) ? (book[key] ?? null) : null;
}

/** What a language calls itself. */
export function languageName(code: string): string {
  const name = new Intl.DisplayNames([code], { type: 'language' }).of(code) ?? code;
  return name.charAt(0).toLocaleUpperCase(code) + name.slice(1);
}
