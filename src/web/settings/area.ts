// How a floor area is written for this person: m² with lengths in cm, ft² with lengths in inches.
import type { Measure } from './measure.ts';

/** Square foot [m²]; exact by the definition of the international foot (1959). */
const footM2 = 0.09290304;

/** "0.72 m²" or "7.8 ft²" of an area [m²]. */
export function areaText(areaM2: number, measure: Measure): string {
  return measure.settings.length === 'in'
    ? `${measure.number(areaM2 / footM2, 1)}\u00a0ft²`
    : `${measure.number(areaM2, areaM2 < 0.1 ? 3 : 2)}\u00a0m²`;
}
