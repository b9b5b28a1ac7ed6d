// What a refusal says by its code in a language other than English.
// Leaves out the English, which stands with the fault itself.
import { type Language, taughtWords } from '../../shared/languages.ts';
import { faultsDe } from './faults-de.ts';

/** What is wrong and what to do, in one or two sentences; null in English and where the code has no words. */
export function faultSaid(code: string, language: Language): string | null {
  if (language === 'en') return null;
  if (language === 'de') return faultsDe[`fault.${code}`] ?? null;
  return taughtWords(language)[`fault:${code}`] ?? null;
}
