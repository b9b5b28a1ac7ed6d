// What stirs the air of a box: heat that rises in it. Heat given to the air at a height does the work of the way that it
// still has up to the ceiling, whoever gives it: a heater's body, a floor over a mat, a sunlit wall. One law at rest, through
// a day and in a year. Leaves out what draught and falling cold air add.
import { bodyOutput, surroundOf } from './heater-body.ts';
import type { BoxModel } from './model.ts';
import type { BoxState } from './network.ts';

/** Part of the box's height through which heat given at a height rises, 0..1: all of it from the floor, none below the ceiling. */
export const riseFrac = (zM: number, heightM: number): number => Math.max(0, Math.min(1, 1 - zM / heightM));

/** Heat that the heaters' bodies give to the air now, each by the part of the height that it rises [W]; surfaces come on top.
 *  @param bodyC temperature of each heater's body, read for those that have one [degC]
 *  Source: work of buoyancy, see docs/theory/box-air.md. Checks: stirring.test.ts, cross/flow-boxes. */
export function bodiesRiseW(model: BoxModel, bodyC: ArrayLike<number>, state: BoxState, roomC: number): number {
  let sum = 0;
  for (let h = 0; h < model.heaters.length; h++) {
    const path = model.heaters[h]!;
    if (path.riseFrac === 0) continue;
    sum += path.riseFrac * Math.max(0, bodyOutput(path, bodyC[h]!, surroundOf(path, state, roomC)).convectedW);
  }
  return sum;
}
