// The words of each language the terminal program speaks.
import { bookIn, type Language } from '../../shared/languages.ts';
import { de } from './de.ts';
import { en, type Messages } from './en.ts';

export const messagesFor = (language: Language): Messages => bookIn<Messages>('terminal', language, { en, de });
