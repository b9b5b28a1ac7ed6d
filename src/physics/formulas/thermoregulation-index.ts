// Does an animal choose its temperature, and how good is the home it chooses in? The field ecologists' three numbers.

export interface ThermoregulationIndex {
  /** Mean distance of body temperatures from the preferred range [K]. */
  readonly bodyK: number;
  /** Mean distance of the temperatures on offer from it [K]: the quality of the home. */
  readonly homeK: number;
  /** 1: chooses well; 0: sits at random; below 0: avoids what it prefers. NaN when the home is perfect. */
  readonly effectiveness: number;
  /** The difference used by later authors, free of that division [K]. */
  readonly differenceK: number;
}

/** Indices from body temperatures, temperatures on offer and the preferred range. @param bodyC @param homeC [°C], both not empty
 *  @param preferredC low and high [°C]. Source: HERTZ1993; difference after BDW2001. Checks: P-168. */
export function thermoregulationIndex(
  bodyC: readonly number[],
  homeC: readonly number[],
  preferredC: readonly [number, number],
): ThermoregulationIndex {
  const off = (t: number) => Math.max(preferredC[0] - t, t - preferredC[1], 0);
  const mean = (all: readonly number[]) => all.reduce((sum, t) => sum + off(t), 0) / all.length;
  const bodyK = mean(bodyC);
  const homeK = mean(homeC);
  return { bodyK, homeK, effectiveness: 1 - bodyK / homeK, differenceK: homeK - bodyK };
}
