// Where else in a box could a heater go? A few places beside the usual one, each within the rules: the other end, further
// in, lower, to the back. Leaves out: the usual place (place-heater.ts), and whether another is better (search/).
import type { Enclosure, Heater } from '../../physics/enclosure.ts';
import { heaterBodies } from '../../physics/heater-kinds.ts';

export const heaterSpots = ['usual', 'other-end', 'further-in', 'lower', 'to-the-back'] as const;
export type HeaterSpot = (typeof heaterSpots)[number];

/** How far each place lies from the usual one; our choice: enough to change the answer, little enough to stay at its end. */
export const further = { inShare: 0.1, lowerM: 0.1, backShare: 0.72 } as const;
/** A basking site keeps this share of the length on its own half of the box; else there is no cool end (our choice). */
const mostInShare = 0.35;

/** The heater moved to another place, or null where this kind of heater or box has no such place.
 *  @param leastUpM lowest that a lamp or emitter may hang inside [m] */
export function movedTo(spot: HeaterSpot, heater: Heater, enclosure: Enclosure, leastUpM: number): Heater | null {
  const { lengthM: L, depthM: D } = enclosure.box;
  const left = heater.xM <= L / 2;
  const isBody = heaterBodies[heater.kind].form === 'body';
  if (spot === 'usual') return heater;
  if (spot === 'other-end') return { ...heater, xM: L - heater.xM };
  // flat heaters lie against their wall and take the whole depth that they need
  if (!isBody) return null;
  if (spot === 'further-in') {
    const fromWallM = (left ? heater.xM : L - heater.xM) + further.inShare * L;
    return fromWallM > mostInShare * L ? null : { ...heater, xM: left ? fromWallM : L - fromWallM };
  }
  if (spot === 'to-the-back') return { ...heater, yM: D * further.backShare };
  const zM = heater.zM - further.lowerM;
  return heater.mount !== 'inside' || zM < leastUpM ? null : { ...heater, zM };
}
