// The books of a run: heat and water in, out and stored, step by step.
import type { RoomDay } from './enclosure.ts';
import type { RunState, StepContext, Tried } from './heat-step.ts';
import type { BoxModel } from './model.ts';
import { type Moisture, moistureStep } from './moisture.ts';
import type { Network } from './network.ts';
import { roomRatioOf } from './steady.ts';

export interface RunTally {
  heatInJ: number;
  heatOutJ: number;
  latentJ: number;
  directJ: number;
  heaterJ: number[];
  switches: number;
  waterInKg: number;
  waterOutKg: number;
  condensedKg: number;
  waterMissKg: number;
  waterMovedKg: number;
  /** Most water that was held at any time in the air and lying on the floor [kg]. */
  waterHeldKg: number;
  /** Change of heat stored in panels, air and heater bodies [J]. */
  storedJ: number;
  /** Sum of what each step's own balance misses, all of one sign [J]. */
  heatMissJ: number;
}

export const startTally = (model: BoxModel): RunTally => ({
  heatInJ: 0,
  heatOutJ: 0,
  latentJ: 0,
  directJ: 0,
  heaterJ: model.heaters.map(() => 0),
  switches: 0,
  waterInKg: 0,
  waterOutKg: 0,
  condensedKg: 0,
  waterMissKg: 0,
  waterMovedKg: 0,
  waterHeldKg: 0,
  storedJ: 0,
  heatMissJ: 0,
});

export const copyTally = (tally: RunTally): RunTally => ({ ...tally, heaterJ: [...tally.heaterJ] });

/** What the books of water miss, as a share of the water that they are about: what came in and went, or what the box held
 *  if that is more. A sealed box moves none; its air carries the same few grams round all day (0.04 kg/s of air at 8 g/kg is
 *  3e-4 kg/s, rounded to 4e-20 kg/s at each node and step), and a miss is a share of those grams. */
export const waterMissShare = ({ waterMissKg, waterMovedKg, waterHeldKg }: RunTally): number =>
  waterMissKg === 0 ? 0 : Math.abs(waterMissKg) / Math.max(waterMovedKg, waterHeldKg);

/** Enter one step of heat; hands it on. */
export function settleAccounts(ctx: StepContext, tried: Tried, tally: RunTally): Tried {
  const { model } = ctx;
  const h = ctx.options.stepS;
  const sunJ = ctx.sunW * h;
  const sunKeptJ = sunJ === 0 ? 0 : model.sunShares.reduce((s, v) => s + v, 0) * sunJ;
  let power = 0;
  for (let i = 0; i < tried.powerW.length; i++) {
    const joules = tried.powerW[i]! * h;
    power += joules;
    tally.heaterJ[i] = tally.heaterJ[i]! + joules;
  }
  const { latentJ } = tried;
  tally.heatInJ += power + sunJ;
  tally.heatOutJ += tried.outJ;
  tally.latentJ += latentJ;
  tally.directJ += power - tried.bodyJ - tried.keptJ + (sunJ - sunKeptJ);
  const miss = tried.keptJ + sunKeptJ + latentJ - tried.outJ - tried.storedJ;
  tally.heatMissJ += Math.abs(miss);
  tally.storedJ += tried.storedJ + tried.bodyJ;
  return tried;
}

/** Water after some time at the conditions of its end; entered in the books. */
export function waterAfter(
  model: BoxModel,
  net: Network,
  state: RunState,
  roomDay: RoomDay,
  roomC: number,
  fromH: number,
  dtS: number,
  tally: RunTally,
): Moisture {
  const spray = sprayIn(model, fromH, fromH + dtS / 3600);
  const room = roomRatioOf((roomDay.lowC + roomDay.highC) / 2, roomDay.rhPct);
  void roomC;
  const m = moistureStep(model, net, state.box, state.moisture, room, dtS, spray);
  const source = m.bowlKgPerS + m.substrateKgPerS + m.sprayKgPerS;
  tally.waterInKg += source * dtS;
  tally.waterOutKg += m.outKgPerS * dtS;
  tally.condensedKg += m.condensedKgPerS * dtS;
  tally.waterMissKg += m.balanceRelative * Math.max(1e-9, m.movedKgPerS) * dtS;
  tally.waterMovedKg += m.movedKgPerS * dtS;
  tally.waterHeldKg = Math.max(tally.waterHeldKg, m.storedKg + m.filmKg);
  return m;
}

/** Water sprayed between two hours [kg]. */
function sprayIn(model: BoxModel, fromH: number, toH: number): number {
  const misting = model.enclosure.misting;
  if (!misting || misting.atHours.length === 0) return 0;
  const each = misting.waterGPerDay / 1000 / misting.atHours.length;
  let kg = 0;
  for (let day = Math.floor(fromH / 24); day <= Math.floor(toH / 24); day++)
    for (const at of misting.atHours) if (day * 24 + at >= fromH - 1e-9 && day * 24 + at < toH - 1e-9) kg += each;
  return kg;
}
