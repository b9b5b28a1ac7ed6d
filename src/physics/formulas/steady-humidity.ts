// Where does the humidity of a box settle when water goes in and room air comes through?

/** Humidity ratio inside at rest. @param roomRatio of the incoming air [kg/kg] @param sourceGPerH water put in [g/h]
 *  @param flowM3PerS air exchange [m³/s] @param dryAirKgPerM3 density of the dry air [kg/m³] @returns [kg/kg].
 *  Water balance. Checks: P-136. */
export const steadyHumidityRatio = (
  roomRatio: number,
  sourceGPerH: number,
  flowM3PerS: number,
  dryAirKgPerM3: number,
): number => roomRatio + sourceGPerH / 3.6e6 / (dryAirKgPerM3 * flowM3PerS);
