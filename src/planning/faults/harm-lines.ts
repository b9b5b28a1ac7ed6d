// When does a fault hurt? Lines for this animal: no cool place left, no warm place left, a surface that burns, air too dry
// or too damp. The lines are our choice on sourced needs; how long an animal bears them is not known, so no line is "safe".
import type { ClimateNeeds } from '../../husbandry/climate.ts';

export type HarmKind = 'too-hot' | 'burns' | 'too-cold' | 'too-dry' | 'too-damp';

export interface HarmLine {
  readonly kind: HarmKind;
  /** Crossed upwards or downwards. */
  readonly side: 'above' | 'below';
  /** [degC], or [%] for the air. */
  readonly at: number;
  readonly unit: '°C' | '%';
  readonly say: string;
}

/** Points of humidity outside the wanted band from which it harms; our choice. */
const humidityBeyondPct = 10;

/** All lines for one animal.
 *  too-hot: even the coolest place is as warm as the animal wants its basking site at most.
 *  burns: a surface in reach passes the alarm of climate-needs.  too-cold: even the warmest hide is below the night minimum. */
export function harmLines(climate: ClimateNeeds): Readonly<Record<HarmKind, HarmLine>> {
  const hot = climate.baskingSurfaceC.high;
  const cold = climate.nightMinC.low;
  const dry = Math.max(0, climate.rhPct.low - humidityBeyondPct);
  const damp = Math.min(100, climate.rhPct.high + humidityBeyondPct);
  const burn = climate.reachableMaxC.alarm;
  return {
    'too-hot': { kind: 'too-hot', side: 'above', at: hot, unit: '°C', say: 'no place in the box is cooler than this' },
    burns: { kind: 'burns', side: 'above', at: burn, unit: '°C', say: 'a surface within reach is hotter than this' },
    'too-cold': {
      kind: 'too-cold',
      side: 'below',
      at: cold,
      unit: '°C',
      say: 'no place in the box is warmer than this',
    },
    'too-dry': {
      kind: 'too-dry',
      side: 'below',
      at: dry,
      unit: '%',
      say: 'the air at the cool end is drier than this',
    },
    'too-damp': {
      kind: 'too-damp',
      side: 'above',
      at: damp,
      unit: '%',
      say: 'the air at the cool end is damper than this',
    },
  };
}

/** What is compared with each line at one moment. */
export interface HarmReadings {
  /** Coolest and warmest place an animal can go to [degC]. */
  readonly coolestC: number;
  readonly warmestC: number;
  readonly surfaceC: number;
  readonly rhPct: number;
}

export const readingFor = (kind: HarmKind, r: HarmReadings): number =>
  kind === 'too-hot' ? r.coolestC : kind === 'too-cold' ? r.warmestC : kind === 'burns' ? r.surfaceC : r.rhPct;

export const crossed = (line: HarmLine, value: number): boolean =>
  line.side === 'above' ? value > line.at : value < line.at;
