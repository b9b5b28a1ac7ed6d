import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Verdict } from '../../shared/verdict.ts';
import { enclosureInBox } from '../kit/shelf-box.ts';
import { planEnclosure } from '../plan.ts';
import { itemsOf } from '../shelf/shelf.ts';
import { helpVersions, judgeHome } from './judge-home.ts';
import { otherBoxes } from './other-boxes.ts';
import type { SearchInput } from './search-input.ts';
import { searchKitsNow } from './search-kits.ts';
import { settingOf } from './solve-task.ts';
import { spreadHomes } from './spread-homes.ts';
import { compareHelp, type HelpingChange, whatHelps } from './what-helps.ts';

/** One thread after another, as the search does where there is only one. */
const judgeOf = (input: SearchInput) =>
  spreadHomes([async (home) => judgeHome(home, settingOf(input))], async () => {});

async function helpsFor(example: string, room: (e: Enclosure) => Enclosure['room'], over: Partial<SearchInput> = {}) {
  const plain = searchInputOf(example, { members: 8, ...over });
  const input = { ...plain, enclosure: { ...plain.enclosure, room: room(plain.enclosure) } };
  const choice = searchKitsNow(input).choices[0];
  if (!choice) throw new Error('no kit may be used');
  return { input, choice, helps: (await whatHelps({ ...input, choice }, judgeOf(input)))! };
}

const hot = (e: Enclosure): Enclosure['room'] => ({
  ...e.room,
  summer: { ...e.room.summer, lowC: 31, highC: 37 },
});

describe('where no heater can cool the room', async () => {
  const { input, choice, helps } = await helpsFor('wood-1200', hot);
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

it('a box of the shelf is named and priced', async () => {
  const cool = (e: Enclosure): Enclosure['room'] => ({
    winter: { ...e.room.winter, lowC: 8, highC: 12 },
    summer: { ...e.room.summer, lowC: 18, highC: 23 },
  });
  const { choice, helps } = await helpsFor('wood-1200', cool);
  expect(choice.verdict).not.toBe('holds');
  const boxes = helps.filter((h) => h.steps.some((s) => s.id === 'box'));
  expect(boxes.length).toBeGreaterThan(0);
  for (const h of boxes) expect(h.parts.find((p) => p.role === 'box')?.price).toBeGreaterThan(0);
  expect(boxes.some((h) => h.steps.length === 1 && h.cost === h.parts[0]?.price)).toBe(true);
  expect(helps[0]?.verdict).toBe('holds');
}, 120_000);

describe('where another box holds only with another kit', () => {
  // the animal of the wooden box in one of PVC, in a room that both would do in
  const mild = (e: Enclosure): Enclosure['room'] => ({
    winter: { ...e.room.winter, lowC: 18, highC: 21 },
    summer: { ...e.room.summer, lowC: 20, highC: 23 },
  });
  const wood = searchInputOf('wood-1200');
  const pvc = itemsOf(wood.shelf, 'enclosure').find((item) => item.id === 'box-pvc-120')!;

  it('box and kit are named together, and planned by themselves they hold', async () => {
    const { input, choice, helps } = await helpsFor('wood-1200', mild, {
      enclosure: enclosureInBox(wood.enclosure, pvc),
      members: 16,
    });
    expect(choice.verdict).not.toBe('holds');
    const turned = helps.flatMap(({ steps: [step, ...others], ...help }) =>
      step?.id === 'box-and-kit' && others.length === 0 && help.verdict === 'holds' ? [{ ...help, step }] : [],
    );
    expect(turned.length).toBeGreaterThan(0);
    for (const { step, enclosure, parts } of turned) {
      expect(step.kit).not.toBe(choice.name);
      // the nearest kit would not have done in that box
      const same = helps.find(
        ({ steps }) => steps.length === 1 && steps[0]?.id === 'box' && steps[0].name === step.name,
      );
      expect(same?.verdict).not.toBe('holds');
      expect(parts.find((part) => part.role === 'box')?.name).toBe(step.name);
      expect(enclosure.heaters.map((heater) => heater.powerW)).toContain(step.heart.heater.powerW);
      const plan = planEnclosure({
        ...{ enclosure, climate: input.climate, materials: input.facts.materials, priors: input.priors },
        ...{ members: helpVersions, seed: input.seed },
      });
      expect(plan.needs.filter((need) => need.verdict !== 'holds').map((need) => need.id)).toEqual([]);
    }
  }, 120_000);
});

describe('where no kit may be used at all', () => {
  const low = searchInputOf('wood-1200', { members: 4 });
  // too low for anything above the animal, and a floor that mats cannot warm such a snake through
  const box = { ...low.enclosure.box, heightM: 0.2 };
  const hides = low.enclosure.hides.map((h) => ({ ...h, heightM: 0.1 }));
  const input = { ...low, enclosure: { ...low.enclosure, box, hides, perch: null } };

  it('boxes of the shelf that take a kit are named and priced, what holds first', async () => {
    const answer = searchKitsNow(input);
    expect(answer.choices).toEqual([]);
    expect(answer.none).toMatch(/may be used/);
    const helps = (await otherBoxes(input, async (asked) => searchKitsNow(asked)))!;
    expect(helps.length).toBeGreaterThan(0);
    for (const h of helps) {
      expect(h.steps[0]?.id).toBe('box-and-kit');
      expect(h.cost).toBeGreaterThan(0);
    }
    expect([...helps].sort(compareHelp)).toEqual(helps);
  }, 120_000);
});
