import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { askedBy, covers, measure } from '../../husbandry/space.ts';
import { loadCareFacts } from '../../records/animal-facts.ts';
import { bandOf, lengthIn, neverYears, yearsUntil } from './growth-forecast.ts';
import { type RoadInput, type StageRoads, stageByLength, stageRoads } from './stage-road.ts';

const care = loadCareFacts().facts;
const search = searchInputOf('tub-mat-600', { members: 2 });
const input: RoadInput = {
  ...search,
  standard: search.facts.standards['home-third']!,
  animal: search.enclosure.animal!,
  care,
  years: 6,
};

function finished(asked: RoadInput): StageRoads {
  const run = stageRoads(asked);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}

describe('growth', () => {
  const band = bandOf(input.species, care)!;
  it('passes a length at the year that it says', () => {
    for (const m of [0.4, 0.6, 0.8]) {
      const years = yearsUntil(band, 0.28, m);
      expect(years.low).toBeLessThan(years.median);
      expect(lengthIn(band, 0.28, years.median).median).toBeCloseTo(m, 6);
      expect(lengthIn(band, 0.28, years.low).high).toBeCloseTo(m, 6);
    }
    expect(yearsUntil(band, 0.28, 9).low).toBe(neverYears);
    expect(yearsUntil(band, 0.7, 0.5)).toEqual({ low: 0, median: 0, high: 0 });
  });
  it('knows the stage by the length', () => {
    expect([0.25, 0.6, 1.2].map((m) => stageByLength(input.species, m))).toEqual(['hatchling', 'young', 'adult']);
  });
});

describe('the road of boxes', () => {
  const roads = finished(input);
  it('keeps every box within the standard to its last day, and joins the years without a gap', () => {
    const { stages } = roads.stepwise;
    expect(stages.length).toBeGreaterThan(1);
    expect(stages[0]!.fromYear).toBe(0);
    expect(stages.at(-1)!.toYear).toBe(input.years);
    stages.forEach((stage, i) => {
      if (i > 0) expect(stage.fromYear).toBe(stages[i - 1]!.toYear);
      const asked = askedBy(input.standard.rule, stage.lengthM.to - 1e-6);
      expect(measure(asked, stage.box).short).toEqual([]);
    });
  });
  it('adds up, and pays for nothing twice', () => {
    for (const road of [roads.stepwise, roads.atOnce!]) {
      const sum = road.stages.reduce((s, x) => s + x.cost.things + x.cost.energy + x.cost.lamps, 0);
      expect(road.total).toBeCloseTo(sum, 9);
      for (const stage of road.stages)
        for (const part of stage.kit?.parts ?? []) if (part.owned) expect(part.price).toBe(0);
    }
    expect(roads.stepwise.stages.slice(1).some((s) => s.usedAgain.length > 0)).toBe(true);
  });
  it('uses again no more pieces than are there', () => {
    const there = new Map(input.ownedIds.map((id) => [id, 1]));
    for (const { kit } of roads.stepwise.stages) {
      for (const part of kit!.parts)
        if (part.owned && there.has(part.itemId))
          expect(part.count, part.name).toBeLessThanOrEqual(there.get(part.itemId)!);
      for (const part of kit!.parts)
        if (!part.owned) there.set(part.itemId, (there.get(part.itemId) ?? 0) + part.count);
      // foam is cut for one box
      for (const part of kit!.parts) if (part.role === 'insulation') expect(part.owned).toBe(false);
    }
    expect(there.size).toBeGreaterThan(5);
  });
  it('the thermostat of the drawing stays the customer’s in every box', () => {
    const items = input.shelf.items.filter(({ kind }) => kind !== 'thermostat');
    const road = finished({ ...input, shelf: { ...input.shelf, items }, drawnIsOwned: true }).stepwise;
    const later = road.stages.slice(1);
    expect(later.length).toBeGreaterThan(0);
    for (const { kit } of later) expect(kit!.heart.thermostat.id).toMatch(/^own-/);
  });
  it('says that a standard does not speak of the animal, and blames no shelf', () => {
    const standard = Object.values(input.facts.standards).find(
      (s) => !covers(s, input.species.id, false, input.animal.totalLengthM),
    )!;
    const road = finished({ ...input, standard });
    expect([road.stepwise.stages, road.why?.id]).toEqual([[], 'not-covered']);
    expect(road.note).toContain(standard.name);
  });
  it('buys the adult box first on the other road', () => {
    expect(roads.atOnce!.stages).toHaveLength(1);
    expect(roads.atOnce!.stages[0]!.box.id).toBe(roads.stepwise.stages.at(-1)!.box.id);
  });
  it('says so when the shelf has no box', () => {
    const shelf = { ...input.shelf, items: input.shelf.items.filter((item) => item.kind !== 'enclosure') };
    const none = finished({ ...input, shelf });
    expect(none.stepwise.stages).toEqual([]);
    expect(none.note).toContain('No box of the shelf');
  });
});
