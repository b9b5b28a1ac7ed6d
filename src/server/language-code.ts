// Which language an answer is wanted in. Leaves out which ones there are: those of the books and of data/languages.
import { Type } from 'typebox';

export const languageCode = Type.String({
  pattern: '^[a-z]{2}$',
  description: 'Two-letter code (ISO 639-1). What has no words in it is said in English.',
});
