// A reason as a key and its blanks, so that screens and printed pages say it in the reader's language (words/).
import type { ReasonKey } from './words/en.ts';

export type { ReasonKey } from './words/en.ts';

export interface Reason {
  readonly key: ReasonKey;
  readonly blanks?: Readonly<Record<string, string | number>>;
}

export const reason = (key: ReasonKey, blanks?: Reason['blanks']): Reason =>
  blanks === undefined ? { key } : { key, blanks };
