// Finds the words for a key in the chosen language and fills in its blanks. One file a language, named by its code
// (en.ts, de.ts): a file put beside them is offered by itself. Only the language in use is fetched.
// Leaves out numbers and units: they come written already (settings/measure.ts).
import type { FactWords } from '../../husbandry/fact-words.ts';
import type { MessageBook, MessageKey } from './en.ts';

export type Translate = (key: MessageKey, blanks?: Readonly<Record<string, string | number>>) => string;

type Book = Readonly<Record<string, string>>;

const files = import.meta.glob<Readonly<Record<string, Book>>>('./??.ts');
const factFiles = import.meta.glob<FactWords>('../../../data/words/??.json', { import: 'default' });

/** Codes of the languages there is a file for, e.g. ["de", "en"]. */
export const bookCodes: readonly string[] = Object.keys(files).map((path) => path.slice(2, 4));

/** These hold every key, by their type; any other may leave some to English. */
const complete = ['en', 'de'];
const loaded = new Map<string, MessageBook>();
const loadedFacts = new Map<string, FactWords>();

/** The words of one language; what a third one leaves open is said in English. */
export async function bookOf(code: string, from: typeof files = files): Promise<MessageBook> {
  const own = (await from[`./${code}.ts`]?.())?.[code] ?? {};
  if (complete.includes(code)) return own as MessageBook;
  return { ...(await bookOf('en', from)), ...own } as MessageBook;
}

/** Fetches the words of a language once; an unknown code is English. Must be done before translateFor. */
export async function loadBook(code: string): Promise<void> {
  if (loaded.has(code)) return;
  const [book, facts] = await Promise.all([bookOf(code), factFiles[`../../../data/words/${code}.json`]?.()]);
  loadedFacts.set(code, { ...book, ...facts });
  loaded.set(code, book);
}

/** The texts of data/ in a language: from its file of data/words, or from its book. Empty for English. */
export const factWordsOf = (code: string): FactWords => loadedFacts.get(code) ?? {};

export const isLoaded = (code: string): boolean => loaded.has(code);

/** Replaces {name} by its blank; a blank that was not handed stays visible as {name}. */
export function filled(message: string, blanks: Readonly<Record<string, string | number>>): string {
  return message.replace(/\{(\w+)\}/g, (all, name: string) => (name in blanks ? String(blanks[name]) : all));
}

export function translateFor(code: string): Translate {
  const book = loaded.get(code);
  if (book === undefined) throw new Error(`the words of "${code}" were not loaded`);
  return (key, blanks) => (blanks ? filled(book[key], blanks) : book[key]);
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
