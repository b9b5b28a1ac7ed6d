// What a refusal says in this person's language: by its code where the language has it, else as it came, marked English.
// Figures of what was sent and of what is allowed follow the sentence; the English has them in its own words.

import { figuresSaid } from '../../proving/words/figures-said.ts';
import type { Fault } from '../../shared/fault.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import type { Measure } from '../settings/measure.ts';
import type { Settings } from '../settings/settings.ts';
import { wordOf } from './translate.ts';

export interface FaultSentence {
  readonly text: string;
  /** Set when the text is in another language than the sheet. */
  readonly lang: 'en' | undefined;
}

/** The English of a refusal; figures of what is allowed are named where its sentences leave them out. */
function englishOf({ say, allowed, fix }: Fault): string {
  const told: readonly string[] = `${say} ${fix}`.match(/\d+(?:[.,]\d+)?/g) ?? [];
  const figures = allowed.match(/\d+(?:[.,]\d+)?/g) ?? [];
  const unsaid = figures.some((figure) => !told.includes(figure));
  return [say, unsaid ? `Allowed: ${allowed}.` : '', fix].filter(Boolean).join(' ');
}

export function faultSentence(fault: Fault, settings: Pick<Settings, 'book'>): FaultSentence {
  const english = englishOf(fault);
  if (settings.book === 'en') return { text: english, lang: undefined };
  const say = wordOf(settings.book, `fault.${fault.code}`);
  if (say === null) return { text: english, lang: 'en' };
  const of = (key: string, text: string): string | null => {
    const label = wordOf(settings.book, key);
    const value = figuresSaid(text, settings.book);
    return label === null || value === null ? null : label.replace('{value}', value);
  };
  const more = [of('fault.gotWord', fault.got), of('fault.allowedWord', fault.allowed)].filter(Boolean);
  return { text: [say, more.length > 0 ? `(${more.join('; ')})` : ''].filter(Boolean).join(' '), lang: undefined };
}

/** Several refusals as one text, in this person's units. */
export const faultSentences = (faults: readonly Fault[], measure: Measure): string =>
  [...new Set(faults.map((fault) => proseInUnits(faultSentence(fault, measure.settings).text, measure)))].join(' ');
