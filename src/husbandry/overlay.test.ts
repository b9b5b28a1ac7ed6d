import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import { climateNeeds } from './climate-needs.ts';
import type { Overlay } from './fact.ts';
import { applyOverlay, overlaidBelow } from './overlay.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const set = (path: string, value: unknown, part: Partial<Overlay> = {}): Overlay => ({
  path,
  value,
  who: 'manager',
  when: '2026-12-01',
  why: 'our vet asks for it',
  ...part,
});

describe('shop values over facts', () => {
  test('the value counts, is remembered with what it was, and the facts given stay as they were', () => {
    const before = structuredClone(facts.species.corn);
    const laid = applyOverlay(facts, [set('species.corn.all.nightMinC.low', 19)]);
    expect(laid.faults).toEqual([]);
    const needs = climateNeeds(laid.facts.species.corn!, 'adult');
    expect(needs.ok && needs.value.nightMinC.low).toBe(19);
    expect(laid.facts.overlaid).toMatchObject([
      { path: 'species.corn.all.nightMinC.low', value: 19, was: 18, who: 'manager' },
    ]);
    expect(facts.species.corn).toEqual(before);
  });

  test('it can be found again for printing', () => {
    const { facts: laid } = applyOverlay(facts, [
      set('species.corn.all.nightMinC.low', 19),
      set('species.royal.all.rhPct.low', 62),
    ]);
    expect(overlaidBelow(laid, 'species.royal').map((o) => o.path)).toEqual(['species.royal.all.rhPct.low']);
    expect(overlaidBelow(laid, 'species.roy')).toEqual([]);
  });

  test('a material follows into the table that physics is handed', () => {
    const { facts: laid } = applyOverlay(facts, [set('materialFacts.cork-board.facts.conductivityWPerMK.value', 0.05)]);
    expect(laid.materials['cork-board']?.conductivityWPerMK).toBe(0.05);
    expect(laid.materials.glass).toEqual(facts.materials.glass);
  });

  test.each([
    ['a value that cannot be', set('species.corn.all.baskingSurfaceC.high', 320), 'DATA_RANGE'],
    ['low above high', set('species.corn.all.nightMinC.low', 25), 'DATA_ORDER'],
    ['words for a number', set('species.corn.all.nightMinC.low', 'warm'), 'DATA_FORM'],
    ['a path that leads nowhere', set('species.dragon.all.nightMinC.low', 20), 'DATA_LINK'],
    ['a source', set('sources.COMMON.title', 'ours'), 'DATA_LINK'],
    ['the bare table of materials', set('materials.glass.densityKgPerM3', 2400), 'DATA_LINK'],
    ['nobody', set('species.corn.all.nightMinC.low', 19, { who: '' }), 'DATA_FORM'],
    ['no reason', set('species.corn.all.nightMinC.low', 19, { why: '' }), 'DATA_FORM'],
    ['no date', set('species.corn.all.nightMinC.low', 19, { when: 'today' }), 'DATA_FORM'],
  ])('%s is refused and named, the rest still counts', (_title, bad, code) => {
    const laid = applyOverlay(facts, [bad, set('species.royal.all.rhPct.low', 62)]);
    expect(laid.faults.map((f) => f.code)).toContain(code);
    expect(laid.faults.every((f) => f.field === bad.path)).toBe(true);
    expect(laid.facts.overlaid.map((o) => o.path)).toEqual(['species.royal.all.rhPct.low']);
    expect(laid.facts.species.corn).toEqual(facts.species.corn);
  });
});
