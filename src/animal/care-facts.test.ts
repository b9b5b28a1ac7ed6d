import { expect, test } from 'vitest';
import { loadCareFacts } from '../records/animal-facts.ts';
import { careFactsFrom, numberOf } from './care-facts.ts';

const loaded = loadCareFacts();

test('the animal’s tables are sound: every row sourced, spoken in both languages, in range', () => {
  expect(loaded.faults).toEqual([]);
  expect(loaded.facts.examination.length).toBeGreaterThanOrEqual(12);
  expect(loaded.facts.triage.complaints.length).toBeGreaterThan(5);
});

test('a row without source or language is named', () => {
  const { faults } = careFactsFrom(
    {
      'examination.json': [{ id: 'x', title: { en: 'X' }, source: 'NOBODY', at: '', read: 'page' }],
      'feeding.json': { restDays: { value: -3, source: 'COMMON', at: '', read: 'memory' } },
    },
    new Set(['COMMON']),
  );
  const codes = faults.map((fault) => `${fault.field} ${fault.code}`);
  expect(codes).toContain('examination.json: [0] DATA_SOURCE');
  expect(codes).toContain('examination.json: [0].title DATA_FORM');
  expect(codes).toContain('feeding.json: restDays DATA_RANGE');
});

test('the order of the hand runs from head to tail', () => {
  expect(loaded.facts.examination.map((step) => step.id)).toEqual([
    'demeanour',
    'mouth',
    'tongue',
    'breath',
    'throat',
    'eyes',
    'outline',
    'spine',
    'skin',
    'vent',
    'tail',
    'droppings',
  ]);
});

test('no step names a drug, a dose or a diagnosis', () => {
  const text = JSON.stringify([loaded.facts.examination, loaded.facts.triage]).toLowerCase();
  const banned =
    /\b(mg|ml|antibiotic|ivermectin|fipronil|pneumonia|stomatitis|septic\w*|virus|cryptospor\w*|antibiotikum|lungenentzündung)\b/;
  expect(banned.exec(text)).toBeNull();
});

test('a fact that is not there is our own bug', () => {
  expect(() => numberOf(loaded.facts.feeding, 'nothing')).toThrow('nothing');
});
