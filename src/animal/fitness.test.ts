import { describe, expect, test } from 'vitest';
import type { Species } from '../husbandry/fact.ts';
import type { Place } from '../husbandry/law-rule.ts';
import { allFacts } from '../records/animal-facts.ts';
import type { AnimalEvent } from './event.ts';
import type { Answers } from './examination.ts';
import { fitness } from './fitness.ts';
import { entry } from './testing/entry.ts';

const { care, facts } = allFacts();
const species = facts.species.corn as Species;
const today = '2026-06-30';
const normal: Answers = Object.fromEntries(care.examination.map((step) => [step.id, []]));
const meal = (on: string) =>
  entry('feeding', on, { preyId: 'mouse-adult', preyMassG: null, count: 1, outcome: 'taken' });
const looked = (on: string, answers: Answers = normal) =>
  entry('examination', on, { answers, massG: 600, outline: '', note: '' });
const sound = [
  meal('2026-06-01'),
  meal('2026-06-12'),
  meal('2026-06-24'),
  entry('weighing', '2026-06-01', { massG: 590 }),
  looked('2026-06-29'),
];
const judge = (events: readonly AnimalEvent[], place: Place = 'england', arrivedOn: string | null = '2026-01-01') =>
  fitness({ species, events, facts: care, law: facts.law, place, arrivedOn, today });
const answerOf = (events: readonly AnimalEvent[], id: string, place: Place = 'england') =>
  judge(events, place).findings.find((finding) => finding.id === id);

describe('may it go', () => {
  test('a sound animal with its record is fit', () => expect(judge(sound).answer).toBe('fit'));

  test('each missing part alone holds it', () => {
    expect(judge([]).answer).toBe('hold');
    expect(judge(sound.slice(1)).answer).toBe('hold'); // two meals
    expect(judge(sound, 'england', null).answer).toBe('hold'); // day of arrival unknown
    expect(judge(sound, 'england', '2026-06-17').answer).toBe('hold'); // day 13
    expect(judge(sound, 'england', '2026-06-16').answer).toBe('fit'); // day 14
  });

  test('a look-over counts for seven days', () => {
    const withOld = (on: string) => [...sound.slice(0, 4), looked(on)];
    expect(judge(withOld('2026-06-23')).answer).toBe('fit');
    expect(judge(withOld('2026-06-22')).answer).toBe('hold');
  });

  test('a vet sign, a tenth of the mass, or two meals brought up send it to the vet', () => {
    expect(judge([...sound, looked('2026-06-30', { ...normal, breath: ['bubbles'] })]).answer).toBe('vet');
    expect(judge([...sound, entry('weighing', '2026-06-30', { massG: 540 })]).answer).toBe('vet');
    expect(judge([...sound, entry('weighing', '2026-06-30', { massG: 541 })]).answer).toBe('fit');
  });

  test('quarantine, mites, slough hold it', () => {
    const days = { step: 'start', why: '', where: '', clearBy: 'time', days: 90, tests: '' } as const;
    expect(judge([...sound, entry('quarantine', '2026-06-01', days)]).answer).toBe('hold');
    expect(judge([...sound, entry('mites', '2026-05-20', { seen: true, where: '' })]).answer).toBe('hold');
    expect(judge([...sound, entry('mites', '2026-05-19', { seen: true, where: '' })]).answer).toBe('fit');
    expect(judge([...sound, entry('slough', '2026-06-30', { stage: 'cloudy' })]).answer).toBe('hold');
  });

  test('treatment: each place by its own law', () => {
    const treated = [...sound, entry('treatment', '2026-06-20', { step: 'start', what: 'x', amount: '', vet: '' })];
    expect(answerOf(treated, 'treatment', 'england')?.reasons[0]?.key).toBe('treatment.blocked');
    expect(answerOf(treated, 'treatment', 'scotland')?.reasons[0]?.key).toBe('treatment.vetAdvice');
    expect(answerOf(treated, 'treatment', 'belgium')?.reasons[0]?.key).toBe('treatment.noRule');
    for (const place of ['england', 'scotland', 'belgium'] as const) expect(judge(treated, place).answer).toBe('hold');
  });

  test('sold or dead is gone; returned is back', () => {
    const sale = (on: string, outcome: 'sold' | 'returned') => entry('sale', on, { outcome, reference: '' });
    expect(judge([...sound, sale('2026-06-29', 'sold')]).answer).toBe('gone');
    expect(judge([...sound, sale('2026-06-28', 'sold'), sale('2026-06-29', 'returned')]).answer).toBe('fit');
    const death = entry('death', '2026-06-29', { foundBy: 'x', signs: '', cause: '', carcass: '', vet: '' });
    expect(judge([...sound, death]).answer).toBe('gone');
  });
});
