// What part of a heater's radiation is light, passes glass, or is plain warmth? Black body by Planck's law.
// Leaves out the lamp's own bulb, which swallows the long tail, and coloured coatings.

/** Second radiation constant [µm K]. Source: CODATA2018. */
export const secondRadiationConstantUmK = 14387.77;
/** Displacement constant of Wien's law [µm K]. Source: CODATA2018. */
export const wienConstantUmK = 2897.772;

/** Wavelength of the strongest radiation. @param tempK [K] @returns [µm]. Source: CODATA2018. Checks: P-097. */
export const peakWavelengthUm = (tempK: number): number => wienConstantUmK / tempK;

/** Share of a black body's radiation below a wavelength.
 *  @param wavelengthUm [µm] @param tempK [K] @returns 0..1, to 1e-9 except above 100 000 µm K. Source: INCROPERA tab. 12.1 (series).
 *  Checks: P-095, P-096, numeric integral of Planck's law. */
export function blackBodyFractionBelow(wavelengthUm: number, tempK: number): number {
  if (wavelengthUm <= 0) return 0;
  const z = secondRadiationConstantUmK / (wavelengthUm * tempK);
  let sum = 0;
  for (let n = 1; n <= 2000; n++) {
    const term = (Math.exp(-n * z) / n) * (z ** 3 + (3 * z ** 2) / n + (6 * z) / n ** 2 + 6 / n ** 3);
    sum += term;
    if (term < 1e-13 * sum || term === 0) break;
  }
  return (15 / Math.PI ** 4) * sum;
}

/** Share between two wavelengths. @param fromUm [µm] @param toUm [µm] @param tempK [K] @returns 0..1. Checks: P-096. */
export const blackBodyFractionBetween = (fromUm: number, toUm: number, tempK: number): number =>
  blackBodyFractionBelow(toUm, tempK) - blackBodyFractionBelow(fromUm, tempK);
