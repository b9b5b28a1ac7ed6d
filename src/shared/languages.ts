// The languages that a file brought (data/languages/xx.json): their words by key, and a whole book made from them.
// English and German have books of their own. Leaves out reading files: whoever starts the program teaches them here,
// once, before anything is said (records/languages.ts, web/messages/translate.ts).
import { type Blanks, filledPattern, numbered } from './pattern.ts';

/** Code of a language, such as "en", "de" or that of a taught one. */
export type Language = string;

/** Key, such as "terminal:plan.needs", to the sentence in that language; open ones are left out. */
export type Words = Readonly<Record<string, string>>;

const taught = new Map<Language, Words>();
/** By language and room, then by the English book: a room's words may be read by several books. */
const made = new Map<string, Map<unknown, unknown>>();

export const ownLanguages: readonly Language[] = ['en', 'de'];

/** Replaces what was taught before under the same code. */
export function teachLanguage(code: Language, words: Words): void {
  if (ownLanguages.includes(code)) throw new Error(`"${code}" has books of its own`);
  taught.set(code, words);
  for (const key of made.keys()) if (key.startsWith(`${code} `)) made.delete(key);
}

export const taughtWords = (code: Language): Words => taught.get(code) ?? {};
export const languageCodes = (): readonly Language[] => [...ownLanguages, ...[...taught.keys()].sort()];
export const isLanguage = (code: string): boolean => ownLanguages.includes(code) || taught.has(code);

/** A text that data or a table holds in both own languages; a taught one has it under its English. */
export function spokenIn(text: { readonly en: string; readonly de: string }, language: Language): string {
  if (language === 'de') return text.de;
  if (language === 'en') return text.en;
  return taughtWords(language)[`fact:${text.en}`] ?? text.en;
}

type Argument = string | number | boolean | null;
type Sentence = (...blanks: readonly Argument[]) => string;
interface Patterned extends Sentence {
  readonly pattern?: string;
}

const blanksFrom = (args: readonly Argument[]): Blanks =>
  numbered(args.map((arg) => (typeof arg === 'number' ? arg : String(arg))));

/** A sentence of a book that has branches, written as a pattern, so that other languages can have other branches. */
export function said<const A extends readonly Argument[]>(pattern: string, language = 'en'): (...blanks: A) => string {
  return Object.assign((...args: A) => filledPattern(pattern, blanksFrom(args), language), { pattern });
}

/** What a sentence of a book looks like with its blanks open: "{0} of {1} rows". */
export function patternOf(sentence: Patterned): string {
  if (sentence.pattern !== undefined) return sentence.pattern;
  return sentence(...Array.from({ length: sentence.length }, (_, i) => `{${i}}`));
}

const isSentence = (x: unknown): x is Patterned => typeof x === 'function';
const hasLetters = (text: string): boolean => /\p{L}{2}/u.test(text.replace(/\{[^}]*\}/g, ''));

/**
 * Every sentence of a book by its key, "plan.needs" or "examples.0"; sentences that give several, such as
 * what to say and how to mend it, one by one. Without those that hold no word.
 */
export function flatBook(book: unknown, at = ''): Readonly<Record<string, string>> {
  if (typeof book === 'string') return hasLetters(book) ? { [at]: book } : {};
  if (isSentence(book)) return flatBook(patternOf(book), at);
  if (typeof book !== 'object' || book === null) return {};
  return Object.assign(
    {},
    ...Object.entries(book).map(([key, part]) => flatBook(part, at === '' ? key : `${at}.${key}`)),
  );
}

/** The same book with what was taught in place of the English; what is open stays English. */
export function bookIn<T>(room: string, language: Language, books: { readonly en: T; readonly de: T }): T {
  if (language === 'en') return books.en;
  if (language === 'de') return books.de;
  const key = `${language} ${room}`;
  const ofRoom = made.get(key) ?? new Map<unknown, unknown>();
  made.set(key, ofRoom);
  const known = ofRoom.get(books.en) as T | undefined;
  if (known !== undefined) return known;
  const book = taughtBook(books.en, `${room}:`, '', taughtWords(language), language) as T;
  ofRoom.set(books.en, book);
  return book;
}

function taughtBook(part: unknown, room: string, at: string, words: Words, language: Language): unknown {
  if (typeof part === 'string') return words[room + at] ?? part;
  if (isSentence(part))
    return (...args: readonly Argument[]) => filledAnswer(part(...args), part, room, at, words, language, args);
  if (typeof part !== 'object' || part === null) return part;
  const inside = Object.entries(part).map(([key, one]) => [
    key,
    taughtBook(one, room, at === '' ? key : `${at}.${key}`, words, language),
  ]);
  return Array.isArray(part) ? inside.map(([, one]) => one) : Object.fromEntries(inside);
}

/** What a sentence answered, text by text in the taught words: it may be one text, or several under their names. */
function filledAnswer(
  english: unknown,
  sentence: Patterned,
  room: string,
  at: string,
  words: Words,
  language: Language,
  args: readonly Argument[],
): unknown {
  if (typeof english === 'string') {
    const pattern = words[room + at];
    return pattern === undefined ? english : filledPattern(pattern, blanksFrom(args), language);
  }
  if (typeof english !== 'object' || english === null) return english;
  const inside = Object.entries(english).map(([key, one]) => [
    key,
    filledAnswer(one, sentence, room, `${at}.${key}`, words, language, args),
  ]);
  return Array.isArray(english) ? inside.map(([, one]) => one) : Object.fromEntries(inside);
}
