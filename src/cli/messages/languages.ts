// The words of each language the terminal program speaks.
import type { Language } from '../display.ts';
import { de } from './de.ts';
import { en, type Messages } from './en.ts';

const books: Readonly<Record<Language, Messages>> = { en, de };

export const messagesFor = (language: Language): Messages => books[language];
