// The hot lump of a lamp or emitter: how warm it gets and how its heat leaves, by air and by long-wave radiation.
// Solved on its own, nonlinear, so that the box around it can stay linear. Leaves out gradients within the body.
import { filmSphere, keptShares } from './kernel/body-law.ts';
import type { BoxModel, HeaterPath } from './model.ts';
import type { BoxState } from './network.ts';

const sigma = 5.670374419e-8;

export interface Surround {
  readonly airC: number;
  /** Fourth-power mean of what the body sees [K^4]. */
  readonly seenK4: number;
}

/** What the body has around it now. */
export function surroundOf(path: HeaterPath, state: BoxState, roomC: number): Surround {
  if (path.outside) return { airC: roomC, seenK4: (roomC + 273.15) ** 4 };
  let sum = 0;
  let k4 = 0;
  for (let s = 0; s < path.longWave.length; s++) {
    const w = path.longWave[s]!;
    if (w === 0) continue;
    sum += w;
    const k = state.surfaceC[s]! + 273.15;
    const k2 = k * k;
    k4 += w * k2 * k2;
  }
  let airC = 0;
  for (const { node, weight } of path.stands) airC += weight * state.airC[node]!;
  return { airC, seenK4: sum > 0 ? k4 / sum : (roomC + 273.15) ** 4 };
}

/** Convected and radiated heat of the body at one temperature [W], with their slopes [W/K]. */
export function bodyOutput(
  path: HeaterPath,
  bodyC: number,
  around: Surround,
): { convectedW: number; radiatedW: number; slope: number } {
  const delta = bodyC - around.airC;
  const film = filmSphere(path.body.diameterM, Math.abs(delta), (bodyC + around.airC) / 2);
  const bodyK = bodyC + 273.15;
  const convectedW = film * path.areaM2 * delta;
  return {
    convectedW,
    radiatedW: bodyRadiatedW(path, bodyC, around.seenK4),
    slope: 1.25 * film * path.areaM2 + 4 * path.body.emissivity * sigma * path.areaM2 * bodyK * bodyK * bodyK,
  };
}

/** Radiated heat of the body at one temperature [W]. */
export function bodyRadiatedW(path: HeaterPath, bodyC: number, seenK4: number): number {
  const bodyK = bodyC + 273.15;
  const bodyK2 = bodyK * bodyK;
  return path.body.emissivity * sigma * path.areaM2 * (bodyK2 * bodyK2 - seenK4);
}

/** Temperature at which the body gives off `powerW`, with `perS` = 0; or after an implicit step from `beforeC`.
 *  @param capacityPerS heat capacity over step weight [W/K], 0 for steady */
export function bodyTemperature(
  path: HeaterPath,
  powerW: number,
  around: Surround,
  guessC: number,
  capacityPerS = 0,
  beforeC = 0,
): number {
  let t = guessC;
  for (let i = 0; i < 40; i++) {
    const o = bodyOutput(path, t, around);
    const miss = powerW - o.convectedW - o.radiatedW - capacityPerS * (t - beforeC);
    const step = miss / (o.slope + capacityPerS);
    t += Math.max(-150, Math.min(150, step));
    if (Math.abs(step) < 1e-5) break;
  }
  return t;
}

/** Part of a heater's power that stays in the box's own balance; the rest leaves at once (clear panels, open mesh, above the lid). */
export function keptW(
  model: BoxModel,
  h: number,
  now: { powerW: number; convectedW: number; radiatedW: number; shortWaveW: number },
): number {
  const path = model.heaters[h]!;
  if (path.body.form === 'area') return path.sheet.length > 0 ? now.powerW : 0;
  const kept = keptShares(path);
  return now.convectedW * kept.convected + now.radiatedW * kept.radiated + now.shortWaveW * kept.shortWave;
}
