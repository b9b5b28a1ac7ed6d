import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import { otherBoxes } from './other-boxes.ts';
import type { SearchInput } from './search-input.ts';
import { searchKits } from './search-kits.ts';
import { compareHelp, type HelpingChange, whatHelps } from './what-helps.ts';

function ended<T>(steps: Generator<unknown, T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

function helpsFor(example: string, room: (e: Enclosure) => Enclosure['room'], over: Partial<SearchInput> = {}) {
  const plain = searchInputOf(example, { members: 8, ...over });
  const input = { ...plain, enclosure: { ...plain.enclosure, room: room(plain.enclosure) } };
  const choice = ended(searchKits(input)).choices[0];
  if (!choice) throw new Error('no kit may be used');
  return { input, choice, helps: ended(whatHelps({ ...input, choice })) };
}

const hot = (e: Enclosure): Enclosure['room'] => ({
  ...e.room,
  summer: { ...e.room.summer, lowC: 31, highC: 37 },
});

describe('where no heater can cool the room', () => {
  const { input, choice, helps } = helpsFor('wood-1200', hot);
  it('another or cooled room is named, and that the shelf has no price for it', () => {
    expect(choice.verdict).toBe('fails');
    const cooled = helps.filter((h) => h.steps.some((s) => s.id === 'cooler-summer'));
    expect(cooled.length).toBeGreaterThan(0);
    for (const h of cooled) expect(h.cost).toBeNull();
  });
  it('every price is the sum of its parts, at the prices of the shelf', () => {
    const priceOf = new Map(input.shelf.items.map((i) => [i.id, i.price]));
    for (const h of helps) {
      const sum = h.parts.reduce((all, p) => all + (priceOf.get(p.itemId) ?? Number.NaN) * p.count, 0);
      if (h.cost !== null) expect(h.cost).toBeCloseTo(sum, 6);
      for (const step of h.steps)
        if (step.id === 'box') expect(h.parts.find((p) => p.role === 'box')?.name).toBe(step.name);
    }
  });
  it('they stand in order: what holds, what leaves less open, the cheapest, what has no price', () => {
    expect([...helps].sort(compareHelp)).toEqual(helps);
  });
});

it('of changes that all hold the cheapest is first, and what has no price is last', () => {
  const help = (cost: number | null, verdict: Verdict = 'holds'): HelpingChange => ({
    steps: [{ id: 'shade' }],
    parts: [],
    cost,
    verdict,
    chanceFrac: 1,
    stillOpen: verdict === 'holds' ? [] : ['night-warmth'],
    enclosure: searchInputOf('wood-1200').enclosure,
  });
  const mixed = [help(null), help(160), help(0, 'fails'), help(75)];
  expect(mixed.sort(compareHelp).map((h) => h.cost)).toEqual([75, 160, null, 0]);
});

it('a box of the shelf is named and priced', () => {
  const cool = (e: Enclosure): Enclosure['room'] => ({
    winter: { ...e.room.winter, lowC: 8, highC: 12 },
    summer: { ...e.room.summer, lowC: 18, highC: 23 },
  });
  const { choice, helps } = helpsFor('wood-1200', cool);
  expect(choice.verdict).not.toBe('holds');
  const boxes = helps.filter((h) => h.steps.some((s) => s.id === 'box'));
  expect(boxes.length).toBeGreaterThan(0);
  for (const h of boxes) expect(h.parts.find((p) => p.role === 'box')?.price).toBeGreaterThan(0);
  expect(boxes.some((h) => h.steps.length === 1 && h.cost === h.parts[0]?.price)).toBe(true);
  expect(helps[0]?.verdict).toBe('holds');
}, 120_000);

describe('where no kit may be used at all', () => {
  const low = searchInputOf('wood-1200', { members: 4 });
  // too low for anything above the animal, and a floor that mats cannot warm such a snake through
  const box = { ...low.enclosure.box, heightM: 0.2 };
  const hides = low.enclosure.hides.map((h) => ({ ...h, heightM: 0.1 }));
  const input = { ...low, enclosure: { ...low.enclosure, box, hides, perch: null } };

  it('boxes of the shelf that take a kit are named and priced, what holds first', () => {
    const answer = ended(searchKits(input));
    expect(answer.choices).toEqual([]);
    expect(answer.none).toMatch(/may be used/);
    const helps = ended(otherBoxes(input));
    expect(helps.length).toBeGreaterThan(0);
    for (const h of helps) {
      expect(h.steps[0]?.id).toBe('box-and-kit');
      expect(h.cost).toBeGreaterThan(0);
    }
    expect([...helps].sort(compareHelp)).toEqual(helps);
  }, 120_000);
});
