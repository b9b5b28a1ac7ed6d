// The HTTP doors onto the languages that files bring: which there are, and the words of the screens in one of them.
// Nobody needs an account for them: the keeper's page and the sheet of signing in are read in every language.
import { Type } from 'typebox';
import { languageCodes, ownLanguages, taughtWords } from '../../shared/languages.ts';
import { languageCode } from '../language-code.ts';
import type { App } from '../types.ts';

const tags = ['program'];

/** What the browser never says: the terminal's words and those of prints, which are written here. */
const notOnScreens = /^(?:terminal|pack|register|shop-values|calendar)[.:]/;

export function languageRoutes(app: App): void {
  app.get(
    '/api/languages',
    {
      config: { who: 'anyone' },
      schema: {
        tags,
        summary: 'Codes of the languages that there are words in',
        response: { 200: Type.Array(languageCode) },
      },
    },
    async () => [...languageCodes()],
  );
  app.get(
    '/api/languages/:code',
    {
      config: { who: 'anyone' },
      schema: {
        tags,
        summary: 'What the screens say in a language that a file brought; nothing where there is none',
        params: Type.Object({ code: languageCode }),
        response: { 200: Type.Record(Type.String(), Type.String()) },
      },
    },
    async (request) => {
      const { code } = request.params;
      const words = ownLanguages.includes(code) ? {} : taughtWords(code);
      return Object.fromEntries(Object.entries(words).filter(([key]) => !notOnScreens.test(key)));
    },
  );
}
