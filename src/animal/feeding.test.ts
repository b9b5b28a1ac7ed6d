import { describe, expect, test } from 'vitest';
import type { Species } from '../husbandry/fact.ts';
import { allFacts } from '../records/animal-facts.ts';
import type { AnimalEvent, FeedingOutcome } from './event.ts';
import { mealAdvice, nextFeed, preyThatFits } from './feeding.ts';
import { lifeStageOf } from './life-stage.ts';
import { preyNeed } from './prey-stock.ts';
import { entry } from './testing/entry.ts';

const { care, facts } = allFacts();
const corn = facts.species.corn as Species;
const prey = Object.values(facts.prey);
const meal = (on: string, outcome: FeedingOutcome) =>
  entry('feeding', on, { preyId: 'mouse-adult', preyMassG: null, count: 1, outcome });
const next = (events: readonly AnimalEvent[], today: string, movedOn: string | null = null) =>
  nextFeed({ species: corn, stage: 'adult', events, facts: care, movedOn, today, southern: false });

describe('the meal', () => {
  test('is a share of the mass, with its source, and prey of the shelf that fits', () => {
    const advice = mealAdvice(corn, 'adult', 600, prey, care);
    expect(advice).toMatchObject({ lowG: 30, highG: 60, widestMm: 22, share: { source: 'COMMON', read: 'memory' } });
    expect(advice?.prey[0]).toMatchObject({ count: 1 });
    for (const choice of advice?.prey ?? []) {
      expect(choice.lowG).toBeLessThanOrEqual(60);
      expect(choice.highG).toBeGreaterThanOrEqual(30);
    }
  });
  test('after one was brought up is half', () =>
    expect(mealAdvice(corn, 'adult', 600, prey, care, 0.5)?.highG).toBe(30));
  test('is of the kinds that the species is offered: no worm for a corn snake, no rat for a garter snake', () => {
    const kindsFor = (species: Species, massG: number) =>
      new Set(mealAdvice(species, 'adult', massG, prey, care)?.prey.map((one) => facts.prey[one.preyId]?.animal));
    // 5 to 10 % of 70 g is the mass of a worm, a fish or a small mouse
    expect([...kindsFor(corn, 70)].sort()).toEqual(['mouse', 'rat']);
    expect([...kindsFor(facts.species.garter as Species, 70)].sort()).toEqual(['fish', 'mouse', 'worm']);
  });
  test('names only kinds and species that there are', () => {
    const kinds = new Set(prey.map((one) => one.animal));
    for (const [key, fact] of Object.entries(care.feeding).filter(([key]) => key.startsWith('preyKinds'))) {
      for (const kind of fact.values ?? []) expect(kinds, key).toContain(kind);
      const speciesId = key.split('.')[1];
      if (speciesId) expect(Object.keys(facts.species)).toContain(speciesId);
    }
  });
  test('nothing fits a meal smaller than any prey', () => expect(preyThatFits(prey, 0.01, 0.1)).toEqual([]));
});

describe('the next feed of an adult corn snake: 10 to 14 days', () => {
  const ate = [meal('2026-05-01', 'taken')];
  test.each([
    ['2026-05-10', 'later'],
    ['2026-05-11', 'due'],
    ['2026-05-15', 'due'],
    ['2026-05-16', 'overdue'],
  ])('on %s: %s', (today, state) =>
    expect(next(ate, today)).toMatchObject({ state, from: '2026-05-11', to: '2026-05-15' }),
  );

  test('five days after a move, not before', () => {
    expect(next([], '2026-05-05', '2026-05-01')).toMatchObject({ state: 'wait', from: '2026-05-06' });
    expect(next([], '2026-05-06', '2026-05-01').state).toBe('due');
  });

  test('two refusals open the list, one does not; a meal between closes it', () => {
    const keys = (events: readonly AnimalEvent[]) => next(events, '2026-06-01').reasons.map((why) => why.key);
    expect(keys([...ate, meal('2026-05-20', 'refused')])).not.toContain('feed.refused');
    const twice = [...ate, meal('2026-05-20', 'refused'), meal('2026-05-27', 'refused')];
    expect(keys(twice)).toContain('feed.refused');
    expect(keys([...twice, meal('2026-05-28', 'taken'), meal('2026-05-31', 'refused')])).not.toContain('feed.refused');
  });

  test('fourteen days of rest after one brought up, then half a meal', () => {
    const up = [...ate, meal('2026-05-12', 'regurgitated')];
    expect(next(up, '2026-05-25')).toMatchObject({ state: 'wait', from: '2026-05-26', mealFrac: 0.5 });
    expect(next(up, '2026-05-26')).toMatchObject({ state: 'overdue', mealFrac: 0.5 });
    expect(next([...up, meal('2026-05-27', 'taken')], '2026-05-28').mealFrac).toBe(1);
  });

  test('two brought up within sixty days stop everything; on day sixty-one they do not', () => {
    const ups = (second: string) => [meal('2026-03-01', 'regurgitated'), meal(second, 'regurgitated')];
    expect(next(ups('2026-04-30'), '2026-05-01')).toMatchObject({ broughtUpTwice: true, state: 'wait', from: null });
    expect(next(ups('2026-05-01'), '2026-05-02').broughtUpTwice).toBe(false);
  });

  test('in slough it waits without a day', () => {
    const cloudy = entry('slough', '2026-05-10', { stage: 'cloudy' });
    expect(next([...ate, cloudy], '2026-05-12')).toMatchObject({ state: 'wait', from: null });
  });

  test('winter is named with a refusal, in the south half a year later', () => {
    const refused = [...ate, meal('2026-07-01', 'refused')];
    const keys = (southern: boolean) =>
      nextFeed({
        species: corn,
        stage: 'adult',
        events: refused,
        facts: care,
        movedOn: null,
        today: '2026-07-02',
        southern,
      }).reasons.map((why) => why.key);
    expect(keys(false)).not.toContain('feed.winter');
    expect(keys(true)).toContain('feed.winter');
  });

  test('without a stage the interval is not known', () => {
    expect(
      nextFeed({
        species: corn,
        stage: null,
        events: ate,
        facts: care,
        movedOn: null,
        today: '2026-05-11',
        southern: false,
      }).state,
    ).toBe('not-known');
  });
});

test.each([
  [30, 'hatchling'],
  [38, 'young'],
  [109, 'young'],
  [110, 'adult'],
])('a corn snake of %d cm is %s', (cm, stage) => expect(lifeStageOf(corn, cm, null)).toBe(stage));

test('prey needed: as many feeds as fall into the time, and who could not be counted', () => {
  const mouse = { preyId: 'mouse-adult', count: 2, lowG: 36, highG: 60 };
  const eater = { animalId: 'a', prey: mouse, intervalDays: { low: 7, high: 14 }, nextInDays: 0 };
  const { needs, unknown } = preyNeed(
    [eater, { ...eater, animalId: 'b', nextInDays: 29 }, { ...eater, animalId: 'c', prey: null }],
    28,
  );
  expect(needs).toEqual([{ preyId: 'mouse-adult', low: 6, high: 10 }]);
  expect(unknown).toEqual(['c']);
});
