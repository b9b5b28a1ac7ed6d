// Which languages a pack is written in. A further one is a file beside en.ts and a line here.
import { de } from './de.ts';
import { en, type PackWords } from './en.ts';

export const packBooks = { en, de } as const satisfies Readonly<Record<string, PackWords>>;
export type PackLanguage = keyof typeof packBooks;
export const packLanguages = Object.keys(packBooks) as readonly PackLanguage[];
