// Are the sentences of a proof said in the reader's language and units, and are older answers still shown?
import { beforeAll, expect, it } from 'vitest';
import type { ProofAnswer } from '../../proving/verdict/proof-answer.ts';
import { nextWords, reasonWords } from '../../proving/words/say-proof.ts';
import { loadBook, translateFor } from '../messages/translate.ts';
import { measureFor } from '../settings/measure.ts';
import { firstSettings } from '../settings/settings.ts';

const basking = {
  id: 'basking-surface',
  state: 'failed',
  place: 'basking-surface',
  quantity: 'tempC',
  low: 29,
  high: 33,
  worst: 36,
  side: 'high',
  margin: -3,
  error: 1,
  checked: false,
} as const;
beforeAll(async () => {
  await loadBook('en');
  await loadBook('de');
});

const answer = {
  needs: [basking],
  next: { id: 'turn-dial', say: 'There is no dial to turn at 20 °C.', how: { by: 'no-dial' } },
} as unknown as ProofAnswer;
const german = (of: ProofAnswer = answer) => ({
  t: translateFor('de'),
  measure: measureFor({ ...firstSettings('en-GB'), book: 'de', temperature: 'C' }),
  answer: of,
});

it('says a failed need in German with German decimals, and marks no other language', () => {
  const said = reasonWords(german(), { about: 'need', id: 'basking-surface' }, 'English');
  expect(said.lang).toBeUndefined();
  expect(said.text).toMatch(/^Sonnenplatz.*nicht gehalten: 36,0.*außerhalb/);
  expect(nextWords(german()).text).toMatch(/Es gibt keinen Regler/);
});

it('says it in Fahrenheit to who reads that', () => {
  const measure = measureFor({ ...firstSettings('en-GB'), temperature: 'F' });
  const said = reasonWords(
    { t: translateFor('en'), measure, answer },
    { about: 'need', id: 'basking-surface' },
    'English',
  );
  expect(said.text).toMatch(/96\.8/);
  expect(said.text).not.toMatch(/°C/);
});

it('keeps the sentence of an answer that does not say what it is about, marked as English', () => {
  expect(reasonWords(german(), undefined, 'Fails at 36 °C.')).toEqual({ text: 'Fails at 36 °C.', lang: 'en' });
});
