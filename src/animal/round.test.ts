import { describe, expect, test } from 'vitest';
import type { Species } from '../husbandry/fact.ts';
import { allFacts } from '../records/animal-facts.ts';
import type { AnimalEvent, EventBodies } from './event.ts';
import { exceptionsOf, roundLines, roundSum } from './round.ts';
import { entry } from './testing/entry.ts';

const species = allFacts().facts.species.corn as Species;
const well: EventBodies['round'] = {
  state: 'well',
  water: true,
  locked: true,
  droppings: false,
  warmC: null,
  coolC: null,
  rhPct: null,
  note: '',
};
const animal = (place: string, events: readonly AnimalEvent[] = [], arrivedOn: string | null = '2026-01-01') => ({
  animalId: `${place}-${events.length}`,
  callName: place,
  place,
  species,
  arrivedOn,
  events,
});
const today = '2026-05-10';
const check = (on: string, body: Partial<EventBodies['round']> = {}) => entry('round', on, { ...well, ...body });

describe('the round', () => {
  test('goes along the rack by number', () => {
    expect(roundLines([animal('A10'), animal('A2'), animal('A1')], today).map((line) => line.place)).toEqual([
      'A1',
      'A2',
      'A10',
    ]);
  });
  test('yesterday done is not missed, the day before is one day missed', () => {
    const missed = (on: string) => roundLines([animal('A1', [check(on)])], today)[0]?.missedDays;
    expect(missed('2026-05-10')).toBe(0);
    expect(missed('2026-05-09')).toBe(0);
    expect(missed('2026-05-08')).toBe(1);
  });
  test('an animal that came yesterday has missed nothing, one of the day before a day', () => {
    expect(roundLines([animal('A1', [], '2026-05-09')], today)[0]?.missedDays).toBe(0);
    expect(roundLines([animal('A1', [], '2026-05-08')], today)[0]?.missedDays).toBe(1);
  });
  test('two animals in one enclosure: done when both are', () => {
    const line = roundLines([animal('A1', [check(today)]), animal('A1')], today)[0];
    expect(line).toMatchObject({ state: 'to-do' });
    expect(line?.animals).toHaveLength(2);
  });
  test('the last word of the day counts', () => {
    const events = [check(today, { state: 'not-seen' }), check(today)];
    expect(roundLines([animal('A1', events)], today)[0]?.state).toBe('well');
    expect(roundLines([animal('A1', [...events].reverse())], today)[0]?.state).toBe('well');
  });
  test('the sum', () => {
    const lines = roundLines(
      [animal('A1', [check(today)]), animal('A2', [check(today, { water: false })]), animal('A3')],
      today,
    );
    expect(roundSum(lines)).toEqual({ enclosures: 3, done: 2, standOut: 1, missed: 1 });
  });
});

describe('what stands out', () => {
  test.each([
    [{}, []],
    [{ state: 'not-seen' }, ['round.notSeen']],
    [{ state: 'look', note: 'snout' }, ['round.look']],
    [{ locked: false, water: false }, ['round.unlocked', 'round.noWater']],
    [{ warmC: 27 }, []],
    [{ warmC: 26.9 }, ['round.warmAirC.low']],
    [{ warmC: 30.1 }, ['round.warmAirC.high']],
    [{ coolC: 25.1 }, ['round.coolAirC.high']],
    [{ rhPct: 39.9 }, ['round.rhPct.low']],
    [{ rhPct: 60 }, []],
  ] as const)('%j', (part, keys) => {
    expect(exceptionsOf({ species }, { ...well, ...part }).map((why) => why.key)).toEqual(keys);
  });
});
