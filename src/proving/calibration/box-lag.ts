// How long does a box lag behind its room? Heat that it stores over heat that it loses for each kelvin, one number.
// Half of the heat in its walls counts: a wall's outside follows the room. Leaves out the slow part in deep substrate.
import { airHeatCapacityJPerKgK } from '../../physics/formulas/constants.ts';
import type { BoxModel, SettledBox } from '../../physics/simulate.ts';
import { heatOutW } from '../../physics/solve-network.ts';

const airKgPerM3 = 1.18;

/** First-order lag of a settled box [h], 0.1..6. Source: OUR-CHOICE (half of the walls' heat); own estimate. */
export function boxLagH(model: BoxModel, settled: SettledBox, roomC: number): number {
  const walls = model.chains.reduce((s, c) => s + c.surfaceCapacity + c.capacity.reduce((a, b) => a + b, 0), 0);
  const air = model.airVolumeM3.reduce((s, v) => s + v, 0) * airKgPerM3 * airHeatCapacityJPerKgK;
  const airC = settled.state.airC.reduce((s, v) => s + v, 0) / settled.state.airC.length;
  const lossWPerK = heatOutW(settled.net, settled.state, roomC) / Math.max(1, airC - roomC);
  return Math.min(6, Math.max(0.1, (walls / 2 + air) / Math.max(0.05, lossWPerK) / 3600));
}
