// The words of a pack in a language.
import { bookIn, type Language } from '../../../shared/languages.ts';
import { de } from './de.ts';
import { en, type PackWords } from './en.ts';

export const packBook = (language: Language): PackWords => bookIn<PackWords>('pack', language, { en, de });
