// How a pack speaks: its words, units and days, where a long name may break, and the sources in the order in which they
// are cited. Leaves out what is said.

import type { IsoDate } from '../../animal/calendar.ts';
import { factWord } from '../../husbandry/fact-words.ts';
import type { Sourced } from '../../husbandry/need.ts';
import { factWords } from '../../records/fact-words.ts';
import type { Language } from '../../shared/languages.ts';
import type { Measure } from '../../shared/measure.ts';
import { type PaperUnits, paperReader } from '../paper-units.ts';
import { packBook } from './words/books.ts';
import type { PackWords } from './words/en.ts';

export interface Span {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

export interface Tongue {
  readonly language: Language;
  readonly w: PackWords;
  readonly m: Measure;
  readonly day: (day: IsoDate) => string;
  /** "[3,4]", and the sources are put on the list. */
  readonly cite: (...sources: readonly Pick<Sourced, 'source'>[]) => string;
  /** Temperature with its unit. */
  readonly temp: (valueC: number, digits?: number) => string;
  /** "30.9 (29.6 to 33.0)", without a unit. */
  readonly spread: (spanC: Span) => string;
  /** "28 to 32", without a unit. */
  readonly bare: (lowC: number, highC: number) => string;
  /** A text of data/ in this language. */
  readonly fact: (english: string) => string;
  /** What a person wrote, with places at which it may break. */
  readonly typed: (written: string) => string;
  /** A sentence of the data, its quantities in the reader's units. */
  readonly prose: (sentence: string) => string;
}

/** @returns the tongue, and the list of what it cited so far */
export function tongueFor(units: PaperUnits): { readonly tongue: Tongue; readonly cited: readonly string[] } {
  const { language } = units;
  const w = packBook(language);
  const reader = paperReader(units);
  const m = reader.measure;
  const words = factWords(language);
  const cited: string[] = [];
  const digits = units.temperature === 'F' ? 0 : 1;
  const bareTemp = (valueC: number, places = digits): string => m.write('temperature', valueC, places).num;
  const cite = (...sources: readonly Pick<Sourced, 'source'>[]): string => {
    const numbers = sources.map(({ source }) => {
      if (!cited.includes(source)) cited.push(source);
      return cited.indexOf(source) + 1;
    });
    return `\u2060[${[...new Set(numbers)].sort((a, b) => a - b).join(',')}]`;
  };
  const tongue: Tongue = {
    language,
    w,
    m,
    day: reader.day,
    cite,
    temp: (valueC, places = digits) => m.text('temperature', valueC, places),
    spread: ({ low, median, high }) =>
      high - low < levelK ? bareTemp(median) : w.range(bareTemp(median), bareTemp(low), bareTemp(high)),
    bare: (lowC, highC) => `${bareTemp(lowC, 0)} ${w.to} ${bareTemp(highC, 0)}`,
    fact: (english) => factWord(words, english),
    typed: breakable,
    prose: (sentence) =>
      reader
        .prose(sentence)
        .replace(/(\d) °/g, '$1\u00a0°')
        .replace(/(\d+(?:[.,]\d+)?) m(?![\wäöü²³])/g, (all, n: string) =>
          units.length === 'in' ? `${m.number(asNumber(n) / footM, 0)}\u00a0ft` : all,
        ),
  };
  return { tongue, cited };
}

/** International foot [m]. */
const footM = 0.3048;

/** A span narrower than this is written as one number [K]. */
const levelK = 0.15;

export const capital = (said: string): string => said.charAt(0).toLocaleUpperCase() + said.slice(1);

const asNumber = (written: string): number => Number(written.replace(',', '.'));

/** Longest run of letters that is left whole. */
const longestRun = 18;

/** A run without a gap gets places of no width at which a line may end; control signs go. */
function breakable(written: string): string {
  const clean = written.replace(/\p{Cc}+/gu, ' ').trim();
  return clean.replace(new RegExp(`\\S{${longestRun + 1},}`, 'gu'), (run) =>
    Array.from({ length: Math.ceil(run.length / 8) }, (_, i) => run.slice(i * 8, (i + 1) * 8)).join('\u200b'),
  );
}

/** Free text of any length, cut where the record holds the rest; names are never cut. */
export function shortened(written: string, most: number): string {
  const letters = [...written];
  return letters.length <= most ? written : `${letters.slice(0, most).join('').trimEnd()} …`;
}
