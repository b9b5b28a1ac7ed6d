// A spray that dries on a floor far too hot: the floor neither falls nor rises beyond what it has, however long the steps.
import { expect, test } from 'vitest';
import { bareEnclosure, heaterOf, panelOf } from '../../checks/box/plain-box.ts';
import { testMaterials } from '../../checks/box/random-enclosure.ts';
import { runBox, runStateFrom, startTally } from './run.ts';
import { buildModel, settleBox } from './simulate.ts';

const room = { lowC: 20, highC: 20, rhPct: 50, sunPeakWPerM2: 0 };
const thin = bareEnclosure({
  name: 'drying',
  sizeM: [0.6, 0.4, 0.4],
  wall: panelOf('wood', 0.003),
  gapAreaM2: 0.001,
  heaters: [heaterOf({ kind: 'halogen-lamp', powerW: 200, mount: 'inside', xM: 0.2, yM: 0.2, zM: 0.25, beamDeg: 30 })],
  roomC: room.lowC,
  roomRhPct: room.rhPct,
});
const sprayedKg = 0.03;
const model = buildModel({ ...thin, misting: { waterGPerDay: 1000 * sprayedKg, atHours: [1] } }, testMaterials);
const dry = settleBox(buildModel(thin, testMaterials), { roomC: 20, roomRhPct: 50, sunWPerM2: 0, isDay: true });

test.each([150, 75, 30])('steps of %d s', (stepS) => {
  const hottest = (row: Float64Array) => Math.max(...row);
  const restC = hottest(dry.state.surfaceC);
  expect(restC).toBeGreaterThan(150);
  const tally = startTally(model);
  let mostC = 0;
  const end = runBox(model, room, runStateFrom(model, dry), 0.5, 3, { stepS, renewS: 300 }, tally, (m) => {
    mostC = Math.max(mostC, hottest(m.state.box.surfaceC));
    if (m.hour > 1.5) expect(Math.abs(hottest(m.state.box.surfaceC) - restC)).toBeLessThan(2);
  });
  expect(mostC).toBeLessThan(restC + 2);
  expect(tally.waterInKg + end.moisture.filmKg).toBeCloseTo(sprayedKg, 9);
  expect(tally.heatMissJ / tally.heatInJ).toBeLessThan(1e-9);
});
