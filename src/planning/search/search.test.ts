import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { boxGeometry, modelFrom } from '../../physics/simulate.ts';
import { climateVerdicts } from '../climate-verdicts.ts';
import { meanBandK } from '../dial/dial-setting.ts';
import { drawMembers } from '../ensemble.ts';
import type { Candidates } from '../kit/kit-candidates.ts';
import { kitEnclosure, restDialC } from '../kit/kit-enclosure.ts';
import { kitRefusal } from '../kit/kit-safety.ts';
import { memberAnswer } from '../member.ts';
import { judgedMember, kitNeeds, needMargins } from './judge-kit.ts';
import { behaviourOf, createKitSearch, type KitSearch, type Ranked, wantedChoices } from './kit-search.ts';
import { prepareSearch } from './prepare-search.ts';
import type { MemberSurface } from './surface.ts';

const members = 16;
const input = searchInputOf('wood-1200', { members });
const prepared = prepareSearch(input);
const { candidates } = prepared;
const parameters = drawMembers(input.priors, members, input.seed);

/** Every version of every third arrangement, solved once; the tests below draw on them. */
const solved = candidates.arrangements.flatMap((arrangement, index) =>
  index % 3 === 0
    ? [{ index, arrangement, surfaces: prepared.solve({ arrangement: index, from: 0, to: members }) }]
    : [],
);

describe('other places of a heater', () => {
  const spots = new Map(candidates.arrangements.map((a) => [a.id, a]));
  it('lie within the rules and really elsewhere; boxes with changes keep the usual one', () => {
    const kinds = new Set([...spots.values()].map((a) => a.spot));
    expect([...kinds].sort()).toEqual(['further-in', 'lower', 'other-end', 'to-the-back', 'usual']);
    for (const [id, a] of spots) {
      const usual = spots.get(a.likeId)?.enclosure.heaters[0];
      const here = a.enclosure.heaters[0];
      if (a.variant.changes.length > 0) expect(a.spot, id).toBe('usual');
      if (a.spot !== 'usual') expect([here?.xM, here?.yM, here?.zM], id).not.toEqual([usual?.xM, usual?.yM, usual?.zM]);
      const index = candidates.arrangements.indexOf(a);
      const kit = candidates.kits[index]![0]!;
      const home = kitEnclosure(a.variant.enclosure, kit, undefined, a.spot);
      expect(['good', 'allowed'], id).toContain(kitRefusal({ ...home }, input.species, input.facts));
    }
  });
  it('are not looked at where the usual one holds with room to spare', () => {
    const mild = {
      ...input.climate,
      coolAirC: { ...input.climate.coolAirC, low: 5, high: 45 },
      rhPct: { ...input.climate.rhPct, low: 0, high: 100 },
    };
    const easy = prepareSearch({ ...input, climate: mild });
    for (let task = easy.search.nextTask(); task && !easy.search.hasFirst(); task = easy.search.nextTask())
      easy.search.take(task, easy.solve(task));
    const elsewhere = easy.search.states.filter((s) => s.arrangement.spot !== 'usual');
    expect(elsewhere.length).toBeGreaterThan(3);
    expect(elsewhere.every((s) => s.needless)).toBe(true);
  });
});

describe('kits read off lines', () => {
  it('agree with the home solved as it stands, where the heater is strong enough and where it is not', () => {
    for (const { index, arrangement, surfaces } of solved.slice(0, 3)) {
      const state = prepared.search.states[index]!;
      for (const powerW of [arrangement.mostW, arrangement.mostW * 0.5]) {
        const heaters = arrangement.enclosure.heaters.map((h, i) => (i === 0 ? { ...h, powerW } : h));
        const t = arrangement.enclosure.thermostats[0]!;
        const rests = { setDayC: restDialC(input.climate) };
        const thermostats = arrangement.enclosure.thermostats.map((x) => (x.id === 'night' ? { ...x, ...rests } : x));
        const enclosure = { ...arrangement.enclosure, heaters, thermostats };
        const nightW = arrangement.nightKind ? arrangement.mostNightW : powerW;
        if (arrangement.nightKind && nightW > powerW) continue;
        const geometry = boxGeometry(enclosure, input.facts.materials);
        const nightBandK = meanBandK(enclosure.thermostats[arrangement.nightKind ? 1 : 0]!);
        const b = {
          powerW,
          bandK: meanBandK(t),
          nightPowerW: nightW,
          nightBandK,
          setDayC: t.setDayC,
          setNightC: t.setNightC,
          twoHeaters: arrangement.nightKind !== null,
        };
        surfaces.slice(0, 4).forEach((surface, m) => {
          const ours = judgedMember(surface, b, input.climate);
          const direct = memberAnswer(modelFrom(geometry, parameters[m]!), state.moments, input.climate);
          const near = (a: number | null, d: number | null, withinK: number) =>
            expect(Math.abs((a ?? 0) - (d ?? 0))).toBeLessThan(withinK);
          // A third of a kelvin is a tenth of the spread between versions (enclosure-model: 3 K at the basking site).
          for (const place of ['basking-surface', 'warm-hide', 'cool-air', 'hottest-reachable'] as const) {
            near(ours.winterDay.places[place], direct.winterDay.places[place], 0.33);
            near(ours.winterNight.places[place], direct.winterNight.places[place], 0.33);
            near(ours.midDay.places[place], direct.midDay.places[place], 0.33);
          }
          // The plan takes all heaters flat out to say whether the dial can be trimmed, a kit only the day heater.
          if (ours.trimmedDialC !== null) near(ours.trimmedDialC, direct.trimmedDialC, 0.33);
          // A heater below three quarters of what is needed misses the basking surface by kelvins, whatever the air.
          if (powerW * surface.heaterPower < 0.75 * surface.day.highW) return;
          near(ours.winterDay.coolRhPct, direct.winterDay.coolRhPct, 3);
          near(ours.summerDay.coolRhPct, direct.summerDay.coolRhPct, 3);
        });
      }
    }
  });

  it('come off their stop on the day and in the night that the plan finds, and are as hot there', () => {
    let turns = 0;
    for (const { index, arrangement, surfaces } of solved.slice(0, 4)) {
      if (arrangement.nightKind) continue;
      // a tenth too weak for the winter day of the best estimate
      const powerW = 0.9 * surfaces[0]!.day.highW;
      const heaters = arrangement.enclosure.heaters.map((h) => ({ ...h, powerW }));
      const geometry = boxGeometry({ ...arrangement.enclosure, heaters }, input.facts.materials);
      const t = arrangement.enclosure.thermostats[0]!;
      const bandK = meanBandK(t);
      const b = {
        powerW,
        bandK,
        nightPowerW: powerW,
        nightBandK: bandK,
        setDayC: t.setDayC,
        setNightC: t.setNightC,
        twoHeaters: false,
      };
      surfaces.slice(0, 6).forEach((surface, m) => {
        const ours = judgedMember(surface, b, input.climate);
        const { moments } = prepared.search.states[index]!;
        const direct = memberAnswer(modelFrom(geometry, parameters[m]!), moments, input.climate);
        for (const when of ['turnDay', 'turnNight'] as const) {
          const [a, d] = [ours[when], direct[when]];
          if (!a || !d) continue;
          turns++;
          expect(Math.abs(a.places['hottest-reachable']! - d.places['hottest-reachable']!), when).toBeLessThan(0.33);
        }
      });
    }
    expect(turns).toBeGreaterThan(3);
  }, 60_000);

  it('hold and fail exactly as the verdicts of the plan say', () => {
    for (const { index, arrangement, surfaces } of solved) {
      const state = prepared.search.states[index]!;
      for (const kit of candidates.kits[index]!.slice(0, 12)) {
        const b = behaviourOf(kit, surfaces[0]!, input.climate);
        const margins = surfaces.map((s) => needMargins(s, b, input.climate));
        const verdicts = climateVerdicts(
          arrangement.enclosure,
          input.climate,
          surfaces.map((s) => judgedMember(s, b, input.climate)),
          state.moments,
        );
        kitNeeds.forEach((need, i) => {
          const share = margins.filter((m) => m[i]! >= 0).length / margins.length;
          expect(`${need} ${verdicts.find((v) => v.id === need)?.shareHolding}`).toBe(`${need} ${share}`);
        });
      }
    }
  });
});

/** The solved arrangements as a search of their own, with costs and needs drawn at random. */
function randomSearch(
  draw: { readonly costs: readonly number[]; readonly shift: number; readonly cool: number; readonly rh: number },
  pruning: boolean,
): KitSearch {
  const part: Candidates = {
    ...candidates,
    arrangements: solved.map((s) => s.arrangement),
    kits: solved.map((s) => candidates.kits[s.index]!),
  };
  const move = <T extends { readonly low: number; readonly high: number }>(r: T, by: number): T => ({
    ...r,
    low: r.low + by,
    high: r.high + by,
  });
  const { climate } = input;
  let n = 0;
  const search = createKitSearch({
    climate: {
      ...climate,
      baskingSurfaceC: move(climate.baskingSurfaceC, draw.shift),
      nightMinC: move(climate.nightMinC, draw.shift),
      coolAirC: move(climate.coolAirC, draw.cool),
      rhPct: move(climate.rhPct, draw.rh),
    },
    candidates: part,
    members: parameters,
    pruning,
    costOf: () => draw.costs[n++ % draw.costs.length]!,
  });
  for (let task = search.nextTask(); task; task = search.nextTask()) {
    const surfaces: readonly MemberSurface[] = solved[task.arrangement]!.surfaces.slice(task.from, task.to);
    search.take(task, surfaces);
  }
  return search;
}

it('putting arrangements aside never changes the first choice, on 200 random shelves and animals', () => {
  let skipped = 0;
  const firsts = new Set<string>();
  fc.assert(
    fc.property(
      fc.record({
        costs: fc.array(fc.integer({ min: 50, max: 2000 }), { minLength: 7, maxLength: 40 }),
        shift: fc.double({ min: -4, max: 4, noNaN: true }),
        cool: fc.double({ min: -3, max: 4, noNaN: true }),
        rh: fc.double({ min: -15, max: 15, noNaN: true }),
      }),
      (draw) => {
        const quick = randomSearch(draw, true);
        const whole = randomSearch(draw, false);
        const ids = (s: KitSearch) => s.offers().map((r) => `${r.kit.id} ${r.key.verdict} ${r.certain}`);
        expect(quick.isDone() && whole.isDone()).toBe(true);
        expect(ids(quick)[0]).toEqual(ids(whole)[0]);
        // and the others offered beside it are the same too, each tried to the end
        expect(ids(quick)).toEqual(ids(whole));
        expect(quick.offers().every((r) => r.state.surfaces.length === members)).toBe(true);
        // what fails is offered only where too little may hold
        const kinds = (some: readonly Ranked[]) => new Set(some.map((r) => r.state.arrangement.likeId)).size;
        const useful = whole.ranking().filter((r) => r.key.verdict !== 'fails');
        const failing = quick.offers().filter((r) => r.key.verdict === 'fails');
        expect(ids(quick)).toHaveLength(Math.min(wantedChoices, kinds(whole.ranking())));
        expect(failing).toHaveLength(ids(quick).length - Math.min(wantedChoices, kinds(useful)));
        const work = quick.work();
        expect(work.solved + work.lost + work.behind).toBe(work.all);
        skipped += work.lost + work.behind;
        firsts.add(ids(whole)[0] ?? '');
      },
    ),
    { numRuns: 200, seed: 5 },
  );
  // the test would show nothing if nothing were ever skipped, or one kit always won
  expect(skipped).toBeGreaterThan(1000);
  expect(firsts.size).toBeGreaterThan(5);
}, 120_000);

it('results that come out of turn change nothing', () => {
  const one = createKitSearch({
    climate: input.climate,
    candidates: { ...candidates, arrangements: [solved[0]!.arrangement], kits: [candidates.kits[solved[0]!.index]!] },
    members: parameters,
    costOf: () => 1,
    pruning: false,
  });
  const two = createKitSearch({
    climate: input.climate,
    candidates: { ...candidates, arrangements: [solved[0]!.arrangement], kits: [candidates.kits[solved[0]!.index]!] },
    members: parameters,
    costOf: () => 1,
    pruning: false,
  });
  const cut = (t: { from: number; to: number }) => solved[0]!.surfaces.slice(t.from, t.to);
  for (let t = one.nextTask(); t; t = one.nextTask()) one.take(t, cut(t));
  const held = [];
  for (;;) {
    const t = two.nextTask();
    if (t) held.push(t);
    const late = held.length > 1 ? held.pop() : !t ? held.pop() : undefined;
    if (late) two.take(late, cut(late));
    else if (!t) break;
  }
  expect(two.ranking().map((r) => [r.kit.id, r.key, [...r.group.tally.held]])).toEqual(
    one.ranking().map((r) => [r.kit.id, r.key, [...r.group.tally.held]]),
  );
});
