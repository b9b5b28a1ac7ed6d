// How much water vapour can air hold at a temperature? Hyland and Wexler over ice and over water.
// Leaves out the small enhancement by air (0.4 %) and supercooled water.
import { kelvinFromCelsius } from './constants.ts';
import type { FormulaRange } from './range.ts';

export const saturationPressureRange: FormulaRange = {
  formula: 'Hyland and Wexler saturation pressure',
  source: 'ASHRAE2017',
  inputs: { tempC: { low: -100, high: 200, unit: '°C' } },
};

/** Saturation pressure of water vapour, over ice below the triple point, over water above.
 *  @param tempC  temperature [°C], -100..200      @returns pressure [Pa]
 *  Source: ASHRAE2017 ch. 1 eq. 5 and 6 (Hyland and Wexler 1983). Checks: P-110, P-111, P-120..P-126, psychrolib grid. */
export function saturationPressurePa(tempC: number): number {
  const t = kelvinFromCelsius(tempC);
  return Math.exp(tempC <= 0.01 ? lnOverIce(t) : lnOverWater(t));
}

function lnOverIce(t: number): number {
  return (
    -5.6745359e3 / t +
    6.3925247 +
    t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13))) +
    4.1635019 * Math.log(t)
  );
}

function lnOverWater(t: number): number {
  return (
    -5.8002206e3 / t +
    1.3914993 +
    t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8)) +
    6.5459673 * Math.log(t)
  );
}

/** Slope of the saturation pressure, analytic derivative of the same law.
 *  @param tempC  temperature [°C]      @returns [Pa/K]      Source: ASHRAE2017 ch. 1 eq. 5 and 6.
 *  Checks: against differences of the law itself (unit test). */
export function saturationSlopePaPerK(tempC: number): number {
  const t = kelvinFromCelsius(tempC);
  const slope =
    tempC <= 0.01
      ? 5.6745359e3 / t ** 2 -
        9.677843e-3 +
        t * (2 * 6.2215701e-7 + t * (3 * 2.0747825e-9 + t * 4 * -9.484024e-13)) +
        4.1635019 / t
      : 5.8002206e3 / t ** 2 - 4.8640239e-2 + t * (2 * 4.1764768e-5 + t * 3 * -1.4452093e-8) + 6.5459673 / t;
  return slope * saturationPressurePa(tempC);
}
