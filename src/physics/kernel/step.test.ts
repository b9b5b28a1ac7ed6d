import fc from 'fast-check';
import { expect, it } from 'vitest';
import { anyEnclosure, testMaterials } from '../../../checks/box/random-enclosure.ts';
import { gamma, plainStep, workFor } from '../heat-step.ts';
import { addLatentSlopes } from '../moisture.ts';
import { factorNetwork, networkAt } from '../network.ts';
import { runStateFrom } from '../run.ts';
import { buildModel, settleBox } from '../simulate.ts';
import { storedBetweenJ } from '../solve-network.ts';
import { ambientSources } from '../steady.ts';
import { stepInKernel } from './step.ts';

it('a step in the kernel is the plain step to rounding', {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(anyEnclosure, fc.double({ min: 0, max: 1, noNaN: true }), (enclosure, duty) => {
      const model = buildModel(enclosure, testMaterials);
      const { lowC, rhPct } = enclosure.room.winter;
      const settled = settleBox(model, { roomC: lowC, roomRhPct: rhPct, sunWPerM2: 0, isDay: true });
      const state = runStateFrom(model, settled);
      const stepS = 30;
      const roomC = lowC + 1;
      const net = networkAt(model, state.box, roomC, 20);
      addLatentSlopes(net, state.moisture);
      const factored = factorNetwork(model, net, 1 / (gamma * stepS));
      const sources = ambientSources(model, 0, state.moisture);
      const work = workFor(model, state.box);
      const ctx = {
        model,
        net,
        factored,
        roomC,
        isDay: true,
        hour: 10,
        options: { stepS, renewS: 300 },
        sunW: 0,
        work,
      };
      const powerW = model.heaters.map((path) => duty * path.heater.powerW);
      const plain = plainStep(ctx, state, powerW);
      const row = new Float64Array(state.box.row.length);
      const fast = stepInKernel(
        { model, net, factored, roomC, ambient: sources, moisture: state.moisture, powerW },
        state.box.row,
        state.bodyC,
        gamma,
        row,
      )!;
      const near = (a: number, b: number, part: number) => expect(Math.abs(a - b)).toBeLessThan(part);
      for (let k = 0; k < row.length; k++) near(row[k]!, plain.box.row[k]!, 1e-6);
      plain.bodyC.forEach((t, h) => {
        near(fast.bodyC[h]!, t, 1e-6);
        near(fast.now[h]!.radiatedW, plain.now[h]!.radiatedW, 1e-5);
        near(fast.before[h]!.radiatedW, plain.before[h]!.radiatedW, 1e-9);
        near(fast.now[h]!.convectedW, plain.now[h]!.convectedW, 1e-5);
        expect(fast.now[h]!.shortWaveW).toBeCloseTo(plain.now[h]!.shortWaveW, 9);
      });
      near(stepS * fast.outW, plain.outJ, 1e-3);
      near(stepS * fast.latentW, plain.latentJ, 1e-3);
      near(stepS * fast.keptW, plain.keptJ, 1e-3);
      near(fast.storedJ, storedBetweenJ(model, state.box, plain.box), 1e-3);
      // its own books close: what came in is what left and what stayed
      near(stepS * (fast.keptW + fast.latentW - fast.outW), fast.storedJ, 1e-6 * Math.max(1, Math.abs(fast.storedJ)));
    }),
    { numRuns: 60, seed: 6 },
  );
});
