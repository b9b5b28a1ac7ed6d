// Water in a cubic metre of air, for the estimates by hand: Magnus over water and the law of gases, written out here so
// that it is not our own formula room that checks itself.

/** @param tempC [degC] @param rhPct [%] @returns [g/m3]. Magnus, 17.62 and 243.12 degC (WMO2008, from memory). */
export function absoluteHumidity(tempC: number, rhPct: number): number {
  const saturatedPa = 611.2 * Math.exp((17.62 * tempC) / (243.12 + tempC));
  return (1000 * ((rhPct / 100) * saturatedPa)) / (461.5 * (tempC + 273.15));
}
