// The hottest square under a heater: what it sees and what it gets is that of its own rectangle, counted once.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bareEnclosure, heaterOf, panelOf } from '../../checks/box/plain-box.ts';
import { testMaterials } from '../../checks/box/random-enclosure.ts';
import { loadFacts } from '../records/facts.ts';
import type { Enclosure } from './enclosure.ts';
import { directExchangeAreas } from './exchange.ts';
import { viewFactorParallel } from './formulas/view-factor-parallel.ts';
import { cutBox, type Patch, spotSideM } from './grid.ts';
import { firstShares } from './pattern.ts';
import { rectArea, solidAngle } from './rectangle.ts';
import { buildModel, simulateDay, solveSteady } from './simulate.ts';

const example = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../data/examples/${name}.json`, import.meta.url), 'utf8')) as Enclosure;
const { materials } = loadFacts(new URL('../../data', import.meta.url).pathname).facts;
const spotsOf = (patches: readonly Patch[]) => patches.flatMap((p, i) => (p.role === 'spot' ? [i] : []));

describe('spot under a radiant panel', () => {
  const box = example('pvc-1200');
  const panel = box.heaters[0]!;
  const { patches } = cutBox(box, 8);
  const spots = spotsOf(patches);

  it('is a square of 0.12 m', () => {
    expect(spots.reduce((s, i) => s + patches[i]!.areaM2, 0)).toBeCloseTo(spotSideM ** 2, 9);
  });

  it('sees the panel by its own view factor', () => {
    const n = patches.length;
    const direct = directExchangeAreas(patches);
    let seen = 0;
    for (const i of spots) for (let j = 0; j < n; j++) if (patches[j]!.role === 'panel') seen += direct[i * n + j]!;
    const [halfX, halfY] = [panel.lengthM! / 2, panel.depthM! / 2];
    const exact = viewFactorParallel(
      { x: [-spotSideM / 2, spotSideM / 2], y: [-spotSideM / 2, spotSideM / 2] },
      { x: [-halfX, halfX], y: [-halfY, halfY] },
      box.box.heightM,
    );
    expect(Math.abs(seen / spotSideM ** 2 / exact - 1)).toBeLessThan(0.01);
  });

  it('is warmer than the mean of its strip', () => {
    const { places } = solveSteady(buildModel(box, materials), { roomC: 20, roomRhPct: 50, sunWPerM2: 0, isDay: true });
    const above = places['basking-spot']! - places['basking-surface']!;
    expect(above).toBeGreaterThan(0.6);
    expect(above).toBeLessThan(1.6);
  });
});

describe('spot under a lamp', () => {
  const box = example('wood-1200');
  const { patches } = cutBox(box, 8);
  const heater = box.heaters[0]!;
  const at = { xM: heater.xM, yM: heater.yM, zM: heater.zM };

  it('gets its solid angle of what goes all round, and the floor round it the rest of its own', () => {
    const shares = firstShares(patches, at, { isotropicFrac: 1, beamDeg: 90 });
    patches.forEach((p, i) => {
      const own = solidAngle(p.rect, at) - (p.holes ?? []).reduce((s, h) => s + solidAngle(h, at), 0);
      expect(shares[i]! * 4 * Math.PI).toBeCloseTo(own * (p.holes?.length ? 1 : p.share), 6);
    });
  });

  it('with the patches round it covers the floor once', () => {
    const floor = patches.filter((p) => p.facing === 'floor').reduce((s, p) => s + p.areaM2, 0);
    expect(floor).toBeCloseTo(box.box.lengthM * box.box.depthM, 9);
    for (const p of patches)
      for (const h of p.holes ?? []) expect(rectArea(h)).toBeLessThanOrEqual(rectArea(p.rect) + 1e-12);
  });

  it('a narrow beam straight down falls on it as two methods say', () => {
    const beam = { isotropicFrac: 0, beamDeg: 30 };
    const low = { ...at, zM: 0.3 };
    const shares = firstShares(patches, low, beam);
    const mine = spotsOf(patches).reduce((s, i) => s + shares[i]!, 0);
    // rays drawn by the beam's law, one for each of a regular set of angles
    const m = Math.log(0.5) / Math.log(Math.cos(Math.PI / 12));
    let hits = 0;
    const n = 400;
    for (let u = 0; u < n; u++)
      for (let v = 0; v < n; v++) {
        const c = (1 - (u + 0.5) / n) ** (1 / (m + 1));
        const r = (low.zM * Math.sqrt(1 - c * c)) / c;
        const turn = (2 * Math.PI * (v + 0.5)) / n;
        if (Math.abs(r * Math.cos(turn)) < spotSideM / 2 && Math.abs(r * Math.sin(turn)) < spotSideM / 2) hits++;
      }
    expect(mine).toBeCloseTo(hits / n / n, 2);
  });
});

it('a soaked floor under lamps that are far too near stays finite after a spray', () => {
  const wall = panelOf('wood', 0.0255);
  const lamp = { mount: 'inside' as const, period: 'all' as const };
  const box = bareEnclosure({
    name: 'soaked',
    sizeM: [1.566, 0.3, 0.2],
    wall,
    panels: { front: panelOf('wood', 0.004) },
    vents: [
      { panel: 'back', alongM: 0.157, heightM: 0.02, areaM2: 0.00235, openFrac: 0.7 },
      { panel: 'back', alongM: 0.769, heightM: 0.0335, areaM2: 0.0035, openFrac: 0.7 },
    ],
    heaters: [
      {
        ...heaterOf({ ...lamp, kind: 'halogen-lamp', powerW: 151.6, xM: 0.8056, yM: 0.1222, zM: 0.116 }),
        period: 'day',
      },
      heaterOf({ ...lamp, id: 'second', kind: 'basking-lamp', powerW: 119.4, xM: 0.6293, yM: 0.2067, zM: 0.1397 }),
    ],
    substrate: { materialId: 'bark', depthM: 0.01, wetFrac: 1 },
    roomC: 24,
    roomRhPct: 22,
  });
  const sprayed = { ...box, day: { startH: 8, endH: 20 }, misting: { waterGPerDay: 100, atHours: [8, 20] } };
  const answer = simulateDay(buildModel(sprayed, testMaterials), sprayed.room.winter, { stepS: 60, leadH: 2 });
  const all = answer.floorC.flat();
  expect(all.every(Number.isFinite)).toBe(true);
  expect(Math.min(...all)).toBeGreaterThan(15);
});
