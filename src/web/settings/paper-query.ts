// Asks for a paper or a calendar as this person reads the sheets: language and units.
import type { Settings } from './settings.ts';

export type PaperChoice = Pick<Settings, 'language' | 'temperature' | 'length' | 'mass'>;

/** @param more of the query, e.g. what is looked for */
export const paperQuery = (
  { language, temperature, length, mass }: PaperChoice,
  more: Readonly<Record<string, string>> = {},
): string => new URLSearchParams({ ...more, language, temperature, length, mass }).toString();
