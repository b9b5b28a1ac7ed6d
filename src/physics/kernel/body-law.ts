// Two things that the kernel has to know of a heater's hot body: its film, and how much of what it gives stays in the box.
import { dryAir } from '../formulas/dry-air.ts';
import { nusseltSphereChurchill } from '../formulas/nusselt-churchill-chu.ts';
import { rayleighNumber } from '../formulas/rayleigh.ts';
import type { HeaterPath } from '../model.ts';

/** Natural-convection film of a sphere. @param diameterM [m] @param delta body minus air, sign ignored [K]
 *  @param filmC mean of both [°C], held to -40..390 @returns [W/m²K]. Source: CHURCHILL1983. Checks: P-100. */
export function filmSphere(diameterM: number, delta: number, filmC: number): number {
  const air = dryAir(Math.max(-40, Math.min(390, filmC)));
  const rayleigh = rayleighNumber(air, Math.max(delta, 0.01), diameterM);
  return (nusseltSphereChurchill(rayleigh, air.prandtl) * air.conductivityWPerMK) / diameterM;
}

/** What share of a heater's heat of each kind stays in the box's own balance; the rest leaves at once. */
export interface KeptShares {
  readonly convected: number;
  readonly radiated: number;
  readonly shortWave: number;
}

const known = new WeakMap<HeaterPath, KeptShares>();

/** Sums of a heater's shares over patches and air nodes [-]; added up once. Source: definition. Checks: books of every run close. */
export function keptShares(path: HeaterPath): KeptShares {
  const found = known.get(path);
  if (found) return found;
  const total = (v: Float64Array) => v.reduce((s, x) => s + x, 0);
  const made = {
    convected: path.outside ? 0 : total(path.plumeAir) + total(path.plumePatch),
    radiated: total(path.longWave),
    shortWave: total(path.shortWave),
  };
  known.set(path, made);
  return made;
}
