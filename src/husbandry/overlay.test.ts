// Shop values over the facts: they count, are marked as the shop's, are remembered, and are refused when they cannot be.
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Heater } from '../physics/enclosure.ts';
import { loadFacts } from '../records/facts.ts';
import { climateNeeds } from './climate-needs.ts';
import { judgeEnclosure } from './judge-enclosure.ts';
import { lawChecks } from './law-checks.ts';
import { overlaidBelow, withShopValues } from './overlay.ts';
import { pathsOf, placeOf } from './overrulable.ts';
import type { ShopParts, ShopValue } from './shop-value.ts';
import { sampleEnclosure } from './testing/sample-enclosure.ts';
import { shopFactsFor } from './used-shop-values.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const set = (path: string, value: ShopParts, part: Partial<ShopValue> = {}): ShopValue => ({
  path,
  value,
  was: {},
  by: 'manager',
  at: '2026-12-01T10:00:00Z',
  why: 'our vet asks for it',
  ...part,
});
const corn = facts.species.corn!;
const needsWith = (values: readonly ShopValue[], enclosure = sampleEnclosure) => {
  const laid = withShopValues(facts, values);
  expect(laid.faults).toEqual([]);
  return judgeEnclosure(enclosure, laid.facts.species.corn ?? corn, null, laid.facts);
};

describe('shop values over facts', () => {
  test('the value counts, is remembered with what it was, and the facts given stay as they were', () => {
    const before = structuredClone(facts.species.corn);
    const laid = withShopValues(facts, [set('species.corn.all.nightMinC', { low: 21, high: 24 })]);
    expect(laid.faults).toEqual([]);
    const needs = climateNeeds(laid.facts.species.corn!, 'adult');
    expect(needs.ok && needs.value.nightMinC).toMatchObject({ low: 21, high: 24, own: { by: 'manager' } });
    expect(laid.facts.overlaid).toMatchObject([{ path: 'species.corn.all.nightMinC', was: {}, by: 'manager' }]);
    expect(facts.species.corn).toEqual(before);
  });

  test('it can be found again for printing', () => {
    const { facts: laid } = withShopValues(facts, [
      set('species.corn.all.nightMinC', { low: 19, high: 20 }),
      set('species.royal.all.rhPct', { low: 62, high: 75 }),
    ]);
    expect(overlaidBelow(laid, 'species.royal').map((o) => o.path)).toEqual(['species.royal.all.rhPct']);
    expect(overlaidBelow(laid, 'species.roy')).toEqual([]);
  });

  test('a material follows into the table that physics is handed', () => {
    const { facts: laid } = withShopValues(facts, [set('materials.cork-board.conductivityWPerMK', { value: 0.05 })]);
    expect(laid.materials['cork-board']?.conductivityWPerMK).toBe(0.05);
    expect(laid.materials.glass).toEqual(facts.materials.glass);
  });

  test('a value for one path replaces the one before it', () => {
    const path = 'species.corn.all.rhPct';
    const laid = withShopValues(facts, [set(path, { low: 45, high: 70 }), set(path, { low: 45, high: 65 })]);
    expect(laid.facts.overlaid).toHaveLength(1);
    expect(laid.facts.species.corn?.all.rhPct?.high).toBe(65);
  });

  test.each([
    ['a value that cannot be', set('species.corn.all.baskingSurfaceC', { low: 30, high: 320 }), 'DATA_RANGE'],
    ['low above high', set('species.corn.all.nightMinC', { low: 25, high: 20 }), 'DATA_ORDER'],
    ['words for a number', set('species.corn.all.nightMinC', { low: 'warm', high: 20 }), 'DATA_FORM'],
    ['half a range', set('species.corn.all.nightMinC', { low: 19 }), 'OVERLAY_PARTS'],
    ['a path that leads nowhere', set('species.dragon.all.nightMinC', { low: 20, high: 21 }), 'OVERLAY_FACT'],
    ['a source', set('sources.COMMON.title', { value: 'ours' }), 'OVERLAY_FACT'],
    ['a name of every object', set('species.corn.all.__proto__', { value: 1 }), 'OVERLAY_FACT'],
    ['what the law says of a species', set('species.corn.all.euAnnex', { value: 'B' }), 'OVERLAY_FACT'],
    ['a metal in a board', set('materials.cork-board.conductivityWPerMK', { value: 65 }), 'DATA_RANGE'],
    ['an unknown substrate', set('species.corn.all.substrates', { values: ['paper', 'gravel'] }), 'OVERLAY_WORD'],
    ['no substrate', set('species.corn.all.substrates', { values: [] }), 'OVERLAY_PARTS'],
    ['an unknown word', set('substrates.peat.moisture', { value: 'soggy' }), 'OVERLAY_WORD'],
    ['watts that no heater has', set('heaters.heat-mat.offeredW', { values: [20, 9000] }), 'DATA_RANGE'],
    ['a lamp that gives no light', set('heaters.basking-lamp.emitsLight', { value: 'no' }), 'OVERLAY_LOOSER'],
    ['an emitter without guard', set('heaters.ceramic-emitter.needsGuard', { value: 'no' }), 'OVERLAY_LOOSER'],
    ['a lamp on pulses', set('thermostats.pulse.drives.basking-lamp', { value: 'good' }), 'OVERLAY_LOOSER'],
    ['a younger buyer', set('law.gb-under-16-ew.years', { value: 14 }), 'OVERLAY_LOOSER'],
    ['a buyer too old to be', set('law.gb-under-16-ew.years', { value: 90 }), 'DATA_RANGE'],
    ['a review before the last look', set('law.gb-under-16-ew.reviewBy', { value: '2020-01-01' }), 'DATA_ORDER'],
    ['a day that is none', set('law.gb-under-16-ew.reviewBy', { value: 'soon' }), 'DATA_FORM'],
    ['the effect of a law', set('law.eu-kingsnake.effect', { value: 'none' }), 'OVERLAY_FACT'],
    ['a proof of no nights', set('policy.proofNights', { value: 0 }), 'OVERLAY_NUMBER'],
    ['a policy that is none', set('policy.discount', { value: 5 }), 'OVERLAY_FACT'],
    ['a standard that is none', set('policy.standardId', { value: 'none-such' }), 'OVERLAY_WORD'],
    ['nobody', set('species.corn.all.rhPct', { low: 45, high: 60 }, { by: '' }), 'OVERLAY_UNSIGNED'],
    ['no reason', set('species.corn.all.rhPct', { low: 45, high: 60 }, { why: ' ' }), 'OVERLAY_UNSIGNED'],
    ['no date', set('species.corn.all.rhPct', { low: 45, high: 60 }, { at: 'today' }), 'OVERLAY_UNSIGNED'],
  ])('%s is refused and named, the rest still counts', (_title, bad, code) => {
    const laid = withShopValues(facts, [bad, set('species.royal.all.rhPct', { low: 62, high: 75 })]);
    expect(laid.faults.map((f) => f.code)).toContain(code);
    expect(laid.faults.every((f) => f.field === bad.path)).toBe(true);
    expect(laid.facts.overlaid.map((o) => o.path)).toEqual(['species.royal.all.rhPct']);
    expect(laid.facts.species.corn).toEqual(facts.species.corn);
  });
});

describe('rows of lists overruled', () => {
  const verdictOf = (needs: ReturnType<typeof needsWith>, id: string) => needs.find((need) => need.id.startsWith(id));

  test('substrate: what suits the animal, and how moist one is', () => {
    const shipped = verdictOf(needsWith([]), 'substrate');
    const named = sampleEnclosure.substrate?.materialId ?? '';
    const others = Object.keys(facts.substrates)
      .filter((id) => id !== named)
      .slice(0, 2);
    const own = verdictOf(needsWith([set('species.corn.all.substrates', { values: others })]), 'substrate');
    expect(own?.wanted).not.toBe(shipped?.wanted);
    expect(own?.reasons).not.toEqual(shipped?.reasons);
  });

  test('thermostat: a kind that the shop no longer lets drive a heater fails, marked as the shop’s', () => {
    const box = sampleEnclosure;
    const [heater] = box.heaters as readonly Heater[];
    const control = box.thermostats.find(({ id }) => id === heater?.thermostatId)?.control ?? 'pulse';
    const before = verdictOf(needsWith([]), 'thermostat-kind');
    const after = verdictOf(
      needsWith([set(`thermostats.${control}.drives.${heater?.kind}`, { value: 'never' })]),
      'thermostat-kind',
    );
    expect([before?.verdict, after?.verdict]).toEqual(['holds', 'fails']);
    expect(after?.own?.why).toBe('our vet asks for it');
  });

  test('heater, load and probe: stricter values turn the verdict and carry the mark', () => {
    const box = sampleEnclosure;
    const [heater] = box.heaters as readonly Heater[];
    const bare = { ...box, heaters: box.heaters.map((one) => ({ ...one, mount: 'inside', guarded: false }) as Heater) };
    const light = needsWith([set(`heaters.${heater?.kind}.emitsLight`, { value: 'yes' })], {
      ...bare,
      heaters: bare.heaters.map((one) => ({ ...one, period: 'all' })),
    });
    expect(verdictOf(light, 'night-light')).toMatchObject({ verdict: 'fails', own: { by: 'manager' } });
    const full = box.heaters.reduce((sum, one) => sum + one.powerW, 0);
    const tight = { ...box, thermostats: box.thermostats.map((t) => ({ ...t, ratingW: full / 0.7 })) };
    expect(verdictOf(needsWith([], tight), 'load')?.verdict).toBe('holds');
    const load = verdictOf(needsWith([set('policy.thermostatLoadPct', { value: 60 })], tight), 'load');
    expect(load).toMatchObject({ verdict: 'fails', own: { path: 'policy.thermostatLoadPct' } });
    const before = verdictOf(needsWith([]), 'probe-place');
    const after = verdictOf(needsWith([set('care.thermostatProbeMm', { low: 300, high: 350 })]), 'probe-place');
    expect([before?.verdict, after?.verdict]).toEqual(['holds', 'fails']);
    expect(after?.wanted).toContain('300 to 350 mm');
  });

  test('law: the shop asks for a higher age, and says when it looked itself', () => {
    const sale = {
      place: 'england',
      speciesId: 'corn',
      annex: 'none',
      buyerAgeYears: 17,
      guardianConsents: null,
      underTreatment: false,
      vetSaysFit: null,
      papersThere: null,
      bothLicensed: null,
    } as const;
    const answer = (values: readonly ShopValue[], today: string) =>
      lawChecks(withShopValues(facts, values).facts.law, sale, today).find((f) => f.ruleId === 'gb-under-16-ew');
    expect(answer([], '2026-12-01')).toMatchObject({ answer: 'allowed', stale: false });
    expect(answer([set('law.gb-under-16-ew.years', { value: 18 })], '2026-12-01')).toMatchObject({
      answer: 'blocked',
      own: { by: 'manager' },
    });
    expect(answer([], '2028-01-01')).toMatchObject({ answer: 'ask', stale: true });
    const looked = set('law.gb-under-16-ew.reviewBy', { value: '2028-06-01' });
    expect(answer([looked], '2028-01-01')).toMatchObject({ answer: 'allowed', stale: false });
  });

  test('every path that is offered leads to a place, and there are some in every list', () => {
    for (const table of ['materials', 'heaters', 'thermostats', 'substrates', 'law', 'policy'] as const) {
      const paths = pathsOf(facts, table);
      expect(paths.length, table).toBeGreaterThan(5);
      for (const path of paths) expect(placeOf(facts, path), path).not.toBeNull();
    }
  });
});

describe('which values an answer names', () => {
  const values = [
    set('species.corn.all.rhPct', { low: 45, high: 60 }),
    set('species.royal.all.rhPct', { low: 62, high: 75 }),
    set('species.corn.hatchling.massG', { value: 7 }),
    set('heaters.heat-mat.offeredW', { values: [20] }),
    set('policy.standardId', { value: 'wales-shop' }),
    set('policy.proofNights', { value: 5 }),
  ];
  const animal = { speciesId: 'corn', stage: 'adult' };
  const enclosure = { heaters: [{ kind: 'ceramic-emitter' }] };
  const named = (asked: Partial<Parameters<typeof shopFactsFor>[2]>) => {
    const own = shopFactsFor(facts, values, { use: 'plan', animal, enclosure, ...asked });
    return [own.standardId, ...own.used.shopValues.map(({ path }) => path)];
  };

  test('those of this animal at this stage, of what is in the box, and the policies of this use', () => {
    expect(named({})).toEqual(['wales-shop', 'species.corn.all.rhPct', 'policy.standardId']);
    expect(named({ standardId: 'home-third' })).toEqual(['home-third', 'species.corn.all.rhPct']);
    expect(named({ enclosure: null })).toContain('heaters.heat-mat.offeredW');
    expect(named({ use: 'proof' })).toEqual(['home-third', 'species.corn.all.rhPct', 'policy.proofNights']);
    expect(named({ animal: null })).toEqual(['home-third']);
  });
});
