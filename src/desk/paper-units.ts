// In which language, units and form of days a paper or a calendar of the program speaks: as whoever asks for it reads, else
// as people at the place do. Leaves out what is said. Laws and what a person typed stay as they are written.
import { type Reader, sayDay } from '../animal/words/say.ts';
import type { Place } from '../husbandry/law-rule.ts';
import type { Language } from '../shared/languages.ts';
import { localeOf, type Measure, measureFor, type UnitChoice } from '../shared/measure.ts';
import { proseInUnits } from '../shared/prose-units.ts';

export interface PaperUnits {
  readonly language: Language;
  readonly temperature: UnitChoice['temperature'];
  readonly length: UnitChoice['length'];
  readonly mass: UnitChoice['mass'];
}

/** Where people read °F and inches. Snakes are weighed in grams there too: common practice. */
const usualInFahrenheit: readonly string[] = ['california', 'colorado', 'florida'] satisfies readonly Place[];

/** What was asked for, else what is read at the place. */
export function paperUnits(asked: Partial<PaperUnits>, place: string | undefined): PaperUnits {
  const us = place !== undefined && usualInFahrenheit.includes(place);
  const language = place === 'germany' ? 'de' : 'en';
  return { language, temperature: us ? 'F' : 'C', length: us ? 'in' : 'cm', mass: 'g', ...asked };
}

/** A reader of a paper: how days, quantities and sentences of the pure rooms are written. */
export interface PaperReader extends Reader {
  readonly measure: Measure;
  readonly day: (day: string) => string;
}

export function paperReader(units: PaperUnits): PaperReader {
  const settings = { ...units, book: units.language };
  const measure = measureFor(settings);
  const days = localeOf(settings) === 'en-US' ? 'en-US' : units.language;
  return { days, measure, day: (day) => sayDay(day, days), prose: (text) => proseInUnits(text, measure) };
}
