import { expect, test } from 'vitest';
import { allFacts, loadCareFacts } from '../../records/animal-facts.ts';
import { type AftercareAnswers, answerFaults, concernLimits, concernsOf, settles } from './answer.ts';
import { taskKinds } from './task.ts';

const { facts: care } = loadCareFacts();
const species = allFacts().facts.species.corn!;
const flagIds = care.triage.redFlags.map((one) => one.id);
const days = { flagIds, from: '2026-09-01', latest: '2026-09-10' };
const fields = (raw: Record<string, unknown>) => answerFaults(raw, days).map((one) => one.field);
const concerns = (said: AftercareAnswers, lastMassG: number | null = 200) =>
  concernsOf(said, { species, stage: 'adult', lastMassG }, concernLimits(care)).map(
    (one) => `${one.id} ${one.urgency}`,
  );

test('everything that cannot be so is told at once', () => {
  expect(fields({ well: 'well', massG: 60, mealOn: '2026-09-04', note: 'quiet' })).toEqual([]);
  expect(
    fields({ well: 'fine', massG: 0, mealOn: '2026-08-31', fittedOn: '2026-09-11', flags: ['x'], odd: 1 }).sort(),
  ).toEqual(['answers.fittedOn', 'answers.flags', 'answers.massG', 'answers.mealOn', 'answers.odd', 'answers.well']);
  expect(fields({ massG: Number.NaN, warmAirC: '30', readingsSent: 'yes' })).toHaveLength(3);
  expect(fields({ note: 'only this' })).toEqual(['answers']);
  expect(fields({})).toEqual(['answers']);
});

test('a task is settled by its own question and by nothing else; a death settles all', () => {
  const full: AftercareAnswers = {
    well: 'well',
    ate: 'taken',
    massG: 60,
    readingsSent: true,
    fittedOn: '2026-09-02',
    iceShownC: 0.2,
    lengthCm: 50,
  };
  for (const kind of taskKinds) {
    expect(settles(kind, full), kind).toBe(true);
    expect(settles(kind, { droppings: 'seen' }), kind).toBe(false);
    expect(settles(kind, { well: 'died' }), kind).toBe(true);
  }
  expect(settles('call-meal', { well: 'well', ate: 'not-offered' })).toBe(false);
  expect(settles('prove-home', { readingsSent: false })).toBe(false);
});

test('a good answer raises nothing; each bad one its own concern, the urgent ones first', () => {
  expect(concerns({ well: 'well', ate: 'taken', droppings: 'none', massG: 205, iceShownC: 0.4 })).toEqual([]);
  expect(concerns({ ate: 'not-offered' })).toEqual([]);
  expect(concerns({ ate: 'refused' })).toEqual(['not-eating look']);
  expect(concerns({ ate: 'refused', well: 'not-well' })).toEqual(['not-well now', 'not-eating look']);
  expect(concerns({ well: 'not-well', flags: ['open-mouth'] })).toEqual(['flags now']);
  expect(concerns({ ate: 'brought-up' })).toEqual(['brought-up now']);
  expect(concerns({ well: 'died' })).toEqual(['died now']);
  expect(concerns({ coolAirC: 45 })).toEqual(['reading look']);
  expect(concerns({ iceShownC: -1.4 })).toEqual(['instrument-off look']);
});

test('loss of mass is seen from the last mass known, and not without one', () => {
  expect(concerns({ massG: 190 })).toEqual(['mass-loss look']);
  expect(concerns({ massG: 150 })).toEqual(['mass-loss now']);
  expect(concerns({ massG: 150 }, null)).toEqual([]);
});
