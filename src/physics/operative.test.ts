// A resting snake lies between its floor, the air and what it sees; the sun of a lamp lifts it; a roof takes that away.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import type { Enclosure } from './enclosure.ts';
import { buildModel, solveSteady } from './simulate.ts';

const data = new URL('../../data/', import.meta.url);
const { facts } = loadFacts(data.pathname);
const wood = JSON.parse(readFileSync(new URL('examples/wood-1200.json', data), 'utf8')) as Enclosure;
const at = (e: Enclosure, watts: number) =>
  solveSteady(buildModel(e, facts.materials), { roomC: 20, roomRhPct: 50, sunWPerM2: 0, isDay: true, fixedW: [watts] });

test('everything at room temperature when nothing heats', () => {
  const a = at({ ...wood, bowl: null }, 0);
  for (const t of Object.values(a.operativeC)) expect(t).toBeCloseTo(20, 3);
});

test('warmer at the basking site than at the cool end, and under direct radiation above the mean of floor and air', () => {
  const a = at(wood, 100);
  expect(a.operativeC['basking-surface']!).toBeGreaterThan(a.operativeC['cool-floor']! + 3);
  expect(a.operativeC['cool-floor']!).toBeGreaterThan(20);
  expect(a.operativeC['basking-surface']!).toBeLessThan(a.places['basking-surface']! + 6);
});

test('a longer, heavier snake of the same place is drawn more to the floor it lies on', () => {
  const animal = { speciesId: 'corn', stage: 'adult' as const, totalLengthM: 1, massG: 60 };
  const thin = at({ ...wood, animal }, 100);
  const thick = at({ ...wood, animal: { ...animal, massG: 2000 } }, 100);
  const gap = (a: typeof thin) => Math.abs(a.operativeC['cool-floor']! - a.places['cool-floor']!);
  expect(gap(thin)).not.toBe(gap(thick));
});
