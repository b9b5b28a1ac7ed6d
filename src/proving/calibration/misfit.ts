// By how much may a real box differ from the simulator even with the best parameters? A misfit for each place, for the
// same place by day or by night, and more of it for rooms colder or warmer than those that were read.
// All are our choice, set on practice boxes of a different model (checks/proving) and judged on others of that model.
import type { LogPlace, Quantity } from '../reading-log.ts';

/** One standard deviation of a place's misfit at a rise of 10 K above the room [K]. */
const placeSd: Readonly<Record<Exclude<LogPlace, 'room'>, number>> = {
  'basking-surface': 5,
  'warm-air': 4.5,
  'warm-hide': 6.5,
  'cool-hide': 3,
  'cool-air': 2,
  'cool-floor': 5.5,
  perch: 3.5,
  probe: 0.5,
};
/** Share of a place's misfit that differs between day and night. */
const periodShare = 0.3;
/** Misfit of humidity [points of %RH] and of power [share]; humidity by the spread of evaporation laws. */
const rhSd = 5;
const powerShare = 0.05;
/** Misfit that grows with the distance from the rooms that were read [K for each K of room]. */
export const reachSdPerK = 0.1;
/** Scatter of one settled window about its own box at rest: slow heat in substrate, draughts, doors [K]. */
export const windowSdK = 0.25;
/** The same for a single hand reading. */
export const handSdK = 0.45;
/** Scatter of a window's humidity [points]. */
export const windowSdRh = 2.5;

/** Standard deviations of the misfit at a reading.
 *  @param riseK modelled value less room [K]; for power the modelled watts */
export function misfitSd(
  quantity: Quantity,
  place: LogPlace,
  riseK: number,
): { readonly place: number; readonly period: number } {
  if (quantity === 'rhPct') return { place: rhSd, period: rhSd * periodShare };
  if (quantity === 'powerW') return { place: riseK * powerShare, period: riseK * powerShare * periodShare };
  if (place === 'room') return { place: 0, period: 0 };
  const k = (placeSd[place] * Math.max(2, Math.abs(riseK))) / 10;
  return { place: k, period: k * periodShare };
}
