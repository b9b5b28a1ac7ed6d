// At what temperature does this air begin to wet a surface? Inverse of the saturation pressure.
import { saturationPressurePa, saturationSlopePaPerK } from './saturation-pressure.ts';

/** Dew point (frost point below 0.01 °C) of air with a given vapour pressure, by Newton steps on ln p.
 *  @param vapourPressurePa  partial pressure of water vapour [Pa], > 0
 *  @returns temperature [°C], exact to 1e-9 K; -Infinity for perfectly dry air
 *  Source: inverse of ASHRAE2017 ch. 1 eq. 5 and 6. Checks: P-110, P-111, psychrolib grid. */
export function dewPointC(vapourPressurePa: number): number {
  if (!(vapourPressurePa > 0)) return Number.NEGATIVE_INFINITY;
  const target = Math.log(vapourPressurePa);
  const magnus = Math.log(vapourPressurePa / 611.2);
  let tempC = Math.max(-100, Math.min(200, (243.12 * magnus) / (17.62 - magnus)));
  for (let i = 0; i < 50; i++) {
    const p = saturationPressurePa(tempC);
    const step = ((Math.log(p) - target) * p) / saturationSlopePaPerK(tempC);
    tempC -= step;
    if (Math.abs(step) < 1e-10) break;
  }
  return tempC;
}
