import { describe, expect, test } from 'vitest';
import { bareEnclosure, heaterOf, panelOf } from '../../checks/box/plain-box.ts';
import { testMaterials } from '../../checks/box/random-enclosure.ts';
import { layoutOf } from './kernel/layout.ts';
import { copyState, networkAt } from './network.ts';
import { shadeFallK } from './shade.ts';
import { buildModel, settleBox } from './simulate.ts';

const roomC = 18;
const conditions = { roomC, roomRhPct: 50, sunWPerM2: 0, isDay: true };

/** A wooden box with an emitter on the left, and its damp share of floor. */
function heated(powerW: number, wetFrac: number) {
  const e = bareEnclosure({
    name: 'shade',
    sizeM: [1.2, 0.6, 0.6],
    wall: panelOf('wood', 0.015),
    gapAreaM2: 0.002,
    heaters: [heaterOf({ kind: 'ceramic-emitter', powerW, mount: 'inside', xM: 0.3, yM: 0.3, zM: 0.45 })],
    substrate: { materialId: 'bark', depthM: 0.03, wetFrac },
    roomC,
    roomRhPct: 50,
  });
  const model = buildModel(e, testMaterials);
  return { model, box: settleBox(model, conditions, undefined, 1e-9) };
}

const floors = ({ model }: ReturnType<typeof heated>): number[] =>
  model.grid.patches.flatMap((p, s) => (p.facing === 'floor' ? [s] : []));

describe('a floor without what the heaters send it', () => {
  test('keeps its own balance: its air, the faces it sees and its panel give it nothing, taken together', () => {
    const { model, box } = heated(100, 0);
    for (const s of floors({ model, box })) {
      const fallK = shadeFallK(model, box, s);
      expect(fallK).toBeGreaterThan(0);
      const state = copyState(box.state);
      state.surfaceC[s] = state.surfaceC[s]! - fallK;
      const net = networkAt(model, state, roomC, 0);
      const here = state.surfaceC[s]!;
      let givenW = net.toAir[s]! * (state.airC[layoutOf(model).airNode[s]!]! - here);
      for (let j = 0; j < model.areas.length; j++)
        givenW += net.radiant[s * model.areas.length + j]! * (state.surfaceC[j]! - here);
      const { first, conductance } = layoutOf(model);
      let perW = 1 / box.net.outerLink[s]!;
      for (const g of conductance.subarray(first[s]!, first[s + 1]!)) perW += 1 / g;
      expect(givenW + (roomC - here) / perW).toBeCloseTo(0, 6);
    }
  });

  test('falls by less where it is damp, for it dries less too', () => {
    const dry = heated(100, 0);
    const damp = heated(100, 1);
    for (const s of floors(dry))
      expect(shadeFallK(damp.model, damp.box, s)).toBeLessThan(shadeFallK(dry.model, dry.box, s));
  });

  test('falls by nothing below a heater that sends nothing', () => {
    const off = heated(0, 0);
    for (const s of floors(off)) expect(shadeFallK(off.model, off.box, s)).toBeCloseTo(0, 9);
  });
});
