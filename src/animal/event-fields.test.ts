import { expect, test } from 'vitest';
import { eventFaults } from './event-fields.ts';

const fields = (kind: string, body: unknown, on = '2026-01-01') =>
  eventFaults(kind, on, body, '2026-01-02').map((fault) => fault.field);

test.each([
  ['weighing', { massG: 12.5 }, []],
  ['weighing', { massG: '12' }, ['massG']],
  ['weighing', { massG: 0.4 }, ['massG']],
  ['weighing', { massG: Number.NaN }, ['massG']],
  ['feeding', { preyId: '', preyMassG: null, count: 0, outcome: 'eaten' }, ['preyId', 'count', 'outcome']],
  ['slough', { stage: 'complete', extra: 1 }, ['extra']],
  ['treatment', { step: 'start', what: ' ', amount: '', vet: 'x'.repeat(2001) }, ['what', 'vet']],
  ['nothing', {}, ['kind']],
  ['note', null, ['text']],
])('%s %j', (kind, body, expected) => expect(fields(kind, body)).toEqual(expected));

test('not after today, and a day that exists', () => {
  expect(fields('note', { text: 'x' }, '2026-01-02')).toEqual([]);
  expect(fields('note', { text: 'x' }, '2026-01-03')).toEqual(['on']);
  expect(fields('note', { text: 'x' }, '2026-02-30')).toEqual(['on']);
});
