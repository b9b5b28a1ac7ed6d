// The same through a year's long steps: a spray that dries on a floor far too hot neither throws it down nor up.
import { expect, test } from 'vitest';
import { bareEnclosure, heaterOf, panelOf } from '../../checks/box/plain-box.ts';
import { testMaterials } from '../../checks/box/random-enclosure.ts';
import { runStateFrom, startTally } from './run.ts';
import { buildModel, settleBox } from './simulate.ts';
import { runSlowly } from './year-run.ts';

const thin = bareEnclosure({
  name: 'drying',
  sizeM: [0.6, 0.4, 0.4],
  wall: panelOf('wood', 0.003),
  gapAreaM2: 0.001,
  heaters: [heaterOf({ kind: 'halogen-lamp', powerW: 200, mount: 'inside', xM: 0.2, yM: 0.2, zM: 0.25, beamDeg: 30 })],
  roomC: 20,
  roomRhPct: 50,
});
const sprayedKg = 0.15;
const model = buildModel({ ...thin, misting: { waterGPerDay: 1000 * sprayedKg, atHours: [2] } }, testMaterials);
const dry = settleBox(buildModel(thin, testMaterials), { roomC: 20, roomRhPct: 50, sunWPerM2: 0, isDay: true });
const room = { hourlyC: new Float64Array(24).fill(20), rhPct: 50 };
const hottest = (row: Float64Array) => Math.max(...row);

test.each([3600, 1800, 900])('steps of %d s', (stepS) => {
  const restC = hottest(dry.state.surfaceC);
  expect(restC).toBeGreaterThan(150);
  const tally = startTally(model);
  const seen: number[] = [];
  const powers: number[] = [];
  const end = runSlowly(model, room, runStateFrom(model, dry), { stepS, renewS: 7200 }, tally, (m) => {
    seen.push(hottest(m.state.box.surfaceC));
    powers.push(m.now[0]!.powerW);
  });
  expect(Math.max(...seen)).toBeLessThan(restC + 2);
  expect(seen.slice((-20 * 3600) / stepS).every((c) => Math.abs(c - restC) < 2)).toBe(true);
  expect(tally.waterInKg + end.moisture.filmKg).toBeCloseTo(sprayedKg, 9);
  expect(tally.heatMissJ / tally.heatInJ).toBeLessThan(1e-9);
  expect(powers.reduce((sum, w) => sum + w, 0) * stepS).toBeCloseTo(tally.heaterJ[0]!, 3);
});
