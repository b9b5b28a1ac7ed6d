// What is left of a heater behind a dimmer? Phase-angle control of a plain resistance, its inverse, and what a
// filament lamp makes of the lower voltage.
import type { FormulaRange } from './range.ts';

export const lampRerateRange: FormulaRange = {
  formula: 'Filament lamp re-rating',
  source: 'LAMPRERATE',
  inputs: { voltageRatio: { low: 0.5, high: 1.1, unit: '' } },
};

/** Power of a plain resistance behind a phase-angle dimmer. @param firingDeg 0 (full) to 180 (off) @returns share of full power 0..1.
 *  Exact for a sine. Checks: P-155. */
export function phaseAnglePowerFrac(firingDeg: number): number {
  const a = (firingDeg * Math.PI) / 180;
  return 1 - a / Math.PI + Math.sin(2 * a) / (2 * Math.PI);
}

/** Firing angle for a wanted power, by halving. @param powerFrac 0..1 @returns [deg]. Inverse of the above. Checks: P-156, round trip. */
export function phaseAngleDeg(powerFrac: number): number {
  let low = 0;
  let high = 180;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (phaseAnglePowerFrac(middle) > powerFrac) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Watts of a filament lamp off its rated voltage. @param voltageRatio true rms / rated @returns share of rated watts.
 *  Source: LAMPRERATE exponent 1.6. Checks: P-149. */
export const lampPowerFrac = (voltageRatio: number): number => voltageRatio ** 1.6;

/** Colour temperature of a filament lamp off its rated voltage. @param voltageRatio @returns share of the rated kelvin.
 *  Source: LAMPRERATE exponent 0.42. Checks: P-149. */
export const lampColourTempFrac = (voltageRatio: number): number => voltageRatio ** 0.42;
