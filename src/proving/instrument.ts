// How far can an instrument be trusted? By its kind and by when it was last checked; carried into every verdict.
// Basis of the usual errors: data sheets of low-cost sensors (+-0.5 °C, +-2 to 5 %RH) and two weeks side by side
// (+0.4 and -0.6 °C systematic); the figures to carry are our choice. Leaves out the checks themselves (instrument-check.ts).
import type { Quantity } from './reading-log.ts';

/** One finished check: what the instrument showed at a known point. */
export interface InstrumentCheck {
  readonly quantity: 'tempC' | 'rhPct';
  /** Wall-clock day it was done [s]. */
  readonly atS: number;
  readonly truth: number;
  readonly shown: number;
  /** How: ice point, a salt, beside another instrument. */
  readonly how: 'ice' | 'salt' | 'beside';
}

export interface Instrument {
  readonly id: string;
  readonly name: string;
  readonly checks: readonly InstrumentCheck[];
}

export interface Trust {
  /** Add this to a reading [in its unit]. */
  readonly correction: number;
  /** Half-width that holds 95 % of its errors once corrected [in its unit]. */
  readonly error: number;
  readonly checked: boolean;
  /** Wall-clock time when the next check is due [s]; null when never checked. */
  readonly dueS: number | null;
}

/** Error to carry [degC, %RH, share of power]: unchecked, checked. Our choice; see the head of this file. */
export const carriedErrors = {
  tempC: { unchecked: 1, checked: 0.5 },
  rhPct: { unchecked: 5, checked: 3 },
} as const;
/** A plug meter's error as a share of its reading; our choice. */
export const powerErrorShare = 0.03;
/** A check counts for a year; our choice (annual check is common practice). */
export const checkLastsS = 365 * 86400;
/** Offsets beyond these mean the instrument is broken, not to be corrected; our choice. */
export const largestOffset = { tempC: 2, rhPct: 12 } as const;

/** How far to trust an instrument for a quantity at a time.
 *  @param instrument null = not registered: unchecked
 *  A check older than a year, or one that shows a broken instrument, counts as none. */
export function trustIn(instrument: Instrument | null, quantity: Quantity, atS: number): Trust {
  if (quantity === 'powerW') return { correction: 0, error: Number.NaN, checked: false, dueS: null };
  // Of two checks within one second the one that was written down later counts.
  const last = (instrument?.checks ?? [])
    .filter((c) => c.quantity === quantity && c.atS <= atS)
    .reduce<InstrumentCheck | undefined>((newest, c) => (newest && newest.atS > c.atS ? newest : c), undefined);
  const errors = carriedErrors[quantity];
  const offset = last === undefined ? 0 : last.truth - last.shown;
  const usable = last !== undefined && atS - last.atS <= checkLastsS && Math.abs(offset) <= largestOffset[quantity];
  return {
    correction: usable ? offset : 0,
    error: usable ? errors.checked : errors.unchecked,
    checked: usable,
    dueS: last === undefined ? null : last.atS + checkLastsS,
  };
}

/** Standard deviation that goes with an error's half-width of 95 %. */
export const sdOfError = (error: number): number => error / 1.96;
