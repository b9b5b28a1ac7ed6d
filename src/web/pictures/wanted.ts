// Which temperatures this animal wants at a place along the box, and how far a temperature is from them.
// The change from the warm end to the cool end is our choice: plateaus at both ends, straight lines between.
// Leaves out the verdict: that is the planning room's, from sourced needs.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { PlaceId } from '../../physics/answer.ts';

export interface Wanted {
  readonly lowC: number;
  readonly highC: number;
}

/** What the pictures need of an animal's climate [°C]. */
export interface WantedClimate {
  readonly baskingLowC: number;
  readonly baskingHighC: number;
  readonly warmLowC: number;
  readonly warmHighC: number;
  readonly coolLowC: number;
  readonly coolHighC: number;
  readonly nightLowC: number;
}

export function wantedClimate(needs: ClimateNeeds): WantedClimate {
  return {
    baskingLowC: needs.baskingSurfaceC.low,
    baskingHighC: needs.baskingSurfaceC.high,
    warmLowC: needs.warmAirC.low,
    warmHighC: needs.warmAirC.high,
    coolLowC: needs.coolAirC.low,
    coolHighC: needs.coolAirC.high,
    nightLowC: needs.nightMinC.low,
  };
}

/** Value at `at` on the straight line between two points, level outside them. */
function ramp(at: number, fromAt: number, from: number, toAt: number, to: number): number {
  const share = Math.min(1, Math.max(0, (at - fromAt) / (toAt - fromAt)));
  return from + (to - from) * share;
}

/** @param fromWarmFrac place along the box, 0 = warm end wall, 1 = cool end wall.
 *  Warm sixth: warm-end low by day; from the middle on: cool-end low. Up to the middle the basking high is allowed;
 *  the last sixth must stay under the cool-end high. At night only the night minimum limits from below. */
export function wantedAt(fromWarmFrac: number, isDay: boolean, climate: WantedClimate): Wanted {
  const dayLowC = ramp(fromWarmFrac, 1 / 6, climate.warmLowC, 1 / 2, climate.coolLowC);
  return {
    lowC: isDay ? dayLowC : Math.min(dayLowC, climate.nightLowC),
    highC: ramp(fromWarmFrac, 1 / 2, climate.baskingHighC, 5 / 6, climate.coolHighC),
  };
}

/** What is wanted at a named place; null where no need speaks of that place. */
export function wantedAtPlace(place: PlaceId, isDay: boolean, climate: WantedClimate): Wanted | null {
  const band = (lowC: number, highC: number): Wanted => ({
    lowC: isDay ? lowC : Math.min(lowC, climate.nightLowC),
    highC,
  });
  switch (place) {
    case 'basking-surface':
    case 'basking-spot':
      return band(climate.baskingLowC, climate.baskingHighC);
    case 'warm-air':
    case 'perch':
      return band(climate.warmLowC, climate.warmHighC);
    case 'warm-hide':
      return band(climate.warmLowC, climate.baskingHighC);
    case 'cool-hide':
    case 'cool-air':
    case 'cool-floor':
      return band(climate.coolLowC, climate.coolHighC);
    default:
      return null;
  }
}

/** Kelvin outside the wanted band: negative too cold, positive too warm, 0 wanted. */
export function kelvinOutside(tempC: number, wanted: Wanted): number {
  if (tempC < wanted.lowC) return tempC - wanted.lowC;
  if (tempC > wanted.highC) return tempC - wanted.highC;
  return 0;
}

/** Steps of the colour scale [K]: level 1 to 1.5 K outside the band, 2 to 3, 3 to 5, 4 beyond (our choice). */
export const levelStepsK = [1.5, 3, 5] as const;
/** Less than this outside the band still counts as wanted on the pictures [K] (our choice). */
export const levelSlackK = 0.1;

/** -4..4; 0 = wanted. */
export type Level = -4 | -3 | -2 | -1 | 0 | 1 | 2 | 3 | 4;
export const levels: readonly Level[] = [-4, -3, -2, -1, 0, 1, 2, 3, 4];

export function levelOf(outsideK: number): Level {
  const size = Math.abs(outsideK);
  if (size <= levelSlackK) return 0;
  const step = 1 + levelStepsK.filter((limit) => size > limit).length;
  return (Math.sign(outsideK) * step) as Level;
}

/** The class of the style sheet that carries the colour of a level. */
export function levelClass(level: Level): string {
  if (level === 0) return 'lvl-0';
  return level < 0 ? `lvl-m${-level}` : `lvl-p${level}`;
}
