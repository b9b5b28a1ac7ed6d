// Which floor temperatures does this animal want along the box, by day and by night, and how far is one from them?
// Plateaus at both ends and straight lines between them are our choice; the numbers at the ends are sourced needs.
// Leaves out: the verdict, which compares named places with the needs themselves.
import type { ClimateNeeds } from './climate.ts';

export interface WantedFloor {
  readonly lowC: number;
  readonly highC: number;
}

/** Value at `at` on the straight line between two points, level outside them. */
function ramp(at: number, fromAt: number, from: number, toAt: number, to: number): number {
  const share = Math.min(1, Math.max(0, (at - fromAt) / (toAt - fromAt)));
  return from + (to - from) * share;
}

/** Wanted band of the floor at one place.
 *  @param fromWarmFrac place along the box, 0 = wall of the warm end, 1 = wall of the cool end
 *  @returns band [°C]: the warm sixth wants the warm end's low by day, the half away from it the cool end's low;
 *  up to the middle the basking high is allowed, the last sixth stays under the cool end's high. At night only the
 *  night minimum limits from below. */
export function wantedFloorAt(fromWarmFrac: number, isDay: boolean, climate: ClimateNeeds): WantedFloor {
  const dayLowC = ramp(fromWarmFrac, 1 / 6, climate.warmAirC.low, 1 / 2, climate.coolAirC.low);
  return {
    lowC: isDay ? dayLowC : Math.min(dayLowC, climate.nightMinC.low),
    highC: ramp(fromWarmFrac, 1 / 2, climate.baskingSurfaceC.high, 5 / 6, climate.coolAirC.high),
  };
}

/** Kelvin outside the wanted band: negative too cold, positive too warm, 0 wanted. */
export function kelvinOutside(tempC: number, wanted: WantedFloor): number {
  if (tempC < wanted.lowC) return tempC - wanted.lowC;
  if (tempC > wanted.highC) return tempC - wanted.highC;
  return 0;
}
