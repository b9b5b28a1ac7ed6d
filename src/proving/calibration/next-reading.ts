// Which one more reading would settle a doubt? Over the possible boxes: how closely each readable number goes with the
// number in doubt, so how much narrower its interval would become. Also: checking the instrument that was used.
import { carriedErrors, sdOfError } from '../instrument.ts';
import type { Fit } from './fit.ts';
import { type Forecast, type InsidePlace, insidePlaces } from './forecast.ts';
import { windowSdK } from './misfit.ts';
import type { MomentId } from './moments.ts';

export interface NextReading {
  readonly kind: 'place' | 'power' | 'check';
  /** Where to read; for "check" the place whose instrument to check. */
  readonly place: InsidePlace | null;
  readonly isDay: boolean;
  /** Width of the doubt that would be left, as a share of now, 0..1. */
  readonly widthLeftFrac: number;
}

/** Readings by how much of the doubt they would take, best first; those that take less than a tenth are left out.
 *  @param checked places whose instrument has been checked */
export function nextReadings(
  fit: Fit,
  forecast: Forecast,
  target: { readonly moment: MomentId; readonly place: InsidePlace },
  checked: readonly InsidePlace[],
): NextReading[] {
  const here = forecast.moments[target.moment];
  const doubt = here.valuesC[target.place];
  if (doubt === undefined) return [];
  const isDay = here.moment.isDay;
  const total = variance(doubt);
  if (total <= 0) return [];
  const read = new Set(fit.input.observations.filter((o) => o.quantity === 'tempC').map((o) => o.place));
  const powerRead = fit.input.observations.some((o) => o.quantity === 'powerW');
  const noise = sdOfError(carriedErrors.tempC.checked) ** 2 + windowSdK ** 2;
  const left = (values: readonly number[], noiseVar: number) => {
    const v = variance(values);
    if (v <= 0) return 1;
    const c = covariance(values, doubt);
    return Math.sqrt(Math.max(0.01, 1 - c ** 2 / (v + noiseVar) / total));
  };
  const out: NextReading[] = [];
  for (const place of insidePlaces) {
    const values = here.valuesC[place];
    if (values === undefined || place === 'probe') continue;
    if (!read.has(place)) out.push({ kind: 'place', place, isDay, widthLeftFrac: left(values, noise) });
    else if (place === target.place && !checked.includes(place)) {
      const gain = sdOfError(carriedErrors.tempC.unchecked) ** 2 - sdOfError(carriedErrors.tempC.checked) ** 2;
      out.push({ kind: 'check', place, isDay, widthLeftFrac: Math.sqrt(Math.max(0.01, 1 - gain / total)) });
    }
  }
  if (!powerRead) {
    const mean = here.powerW.reduce((s, v) => s + v, 0) / here.powerW.length;
    out.push({ kind: 'power', place: null, isDay, widthLeftFrac: left(here.powerW, (0.03 * mean) ** 2 + 1) });
  }
  return out.filter((n) => n.widthLeftFrac < 0.9).sort((a, b) => a.widthLeftFrac - b.widthLeftFrac);
}

function covariance(a: readonly number[], b: readonly number[]): number {
  const ma = a.reduce((s, v) => s + v, 0) / a.length;
  const mb = b.reduce((s, v) => s + v, 0) / b.length;
  return a.reduce((s, v, i) => s + (v - ma) * (b[i]! - mb), 0) / Math.max(1, a.length - 1);
}

const variance = (a: readonly number[]): number => covariance(a, a);
