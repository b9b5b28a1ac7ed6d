import { expect, test } from 'vitest';
import prey from '../../../data/prey.json' with { type: 'json' };
import { preyWords, sayPrey } from './prey.ts';

test('every prey of the data has its word in each language, and no other', () => {
  expect(Object.keys(preyWords).sort()).toEqual(prey.map((one) => one.id).sort());
  for (const one of prey) expect(sayPrey(one.id, 'en')).toBe(one.name);
});

test('what was written by hand stays as it is', () => {
  for (const written of ['two small mice', 'constructor', ''])
    expect([sayPrey(written, 'en'), sayPrey(written, 'de')]).toEqual([written, written]);
});
