// How a fact of a species is written for this person: numbers in their units, known words in their language.
import { isIsoDate } from '../../animal/calendar.ts';
import { sayDay } from '../../animal/words/say.ts';
import type { Sourced } from '../../husbandry/need.ts';
import { unitSuffix } from '../../husbandry/quantities.ts';
import type { ShopParts } from '../../husbandry/shop-value.ts';
import { isMessageKey, type Translate } from '../messages/translate.ts';
import type { Measure, QuantityKind } from '../settings/measure.ts';

export type Parts = ShopParts;

type Value = Pick<Sourced, 'value' | 'low' | 'high'> & { readonly values?: readonly (number | string)[] };

/** Kind of quantity that a key names, with the factor to the stored unit; null when written bare. */
export function kindOf(
  key: string,
  { settings }: Measure,
): { readonly kind: QuantityKind; readonly toStored: number; readonly digits: number } | null {
  if (/[a-z]C$/.test(key)) return { kind: 'temperature', toStored: 1, digits: 1 };
  if (key.endsWith('Pct')) return { kind: 'percent', toStored: 1, digits: 1 };
  if (key.endsWith('Cm')) return { kind: 'length', toStored: 0.01, digits: 1 };
  // A hundredth of an inch is a quarter of a millimetre; who reads cm reads small lengths in mm, named with the quantity.
  if (key.endsWith('Mm') && settings.length === 'in') return { kind: 'length', toStored: 0.001, digits: 2 };
  if (key.endsWith('massG')) return { kind: 'mass', toStored: 1, digits: 1 };
  return null;
}

/** Units that are written the same for everybody; those not named here stand in the name of the quantity. */
const bareUnits: Readonly<Record<string, string>> = {
  W: 'W',
  K: 'K',
  WPerMK: 'W/(m K)',
  KgPerM3: 'kg/m³',
  JPerKgK: 'J/(kg K)',
  JPerK: 'J/K',
  Deg: '°',
};

const plainSpan = (low: number, high: number, measure: Measure): string => {
  const text = (x: number) => measure.number(x, Number.isInteger(x) ? 0 : x < 0.1 ? 3 : 2);
  return low === high ? text(low) : `${text(low)}–${text(high)}`;
};

export function numberText(key: string, low: number, high: number, measure: Measure): string {
  const kind = kindOf(key, measure);
  const whole = key.endsWith('Mm') ? (kind?.digits ?? 0) : 0;
  const digits = Math.max(whole, [low, high].some((x) => !Number.isInteger(x)) ? 1 : 0);
  if (kind) return measure.span(kind.kind, low * kind.toStored, high * kind.toStored, digits);
  const bare = bareUnits[unitSuffix(key) ?? ''];
  if (bare) return `${plainSpan(low, high, measure)} ${bare}`;
  return low === high ? measure.number(low, digits) : `${measure.number(low, digits)}–${measure.number(high, digits)}`;
}

export function factText(key: string, fact: Value | Parts, measure: Measure, t: Translate): string {
  const { low, high, value, values } = fact as Value;
  if (typeof low === 'number' && typeof high === 'number') return numberText(key, low, high, measure);
  if (typeof value === 'number') return numberText(key, value, value, measure);
  if (Array.isArray(values)) return values.map((one) => wordOrNumber(one, key, measure, t)).join(', ');
  if (typeof value !== 'string') return t('ref.unknown');
  return wordOrNumber(value, key, measure, t);
}

function wordOrNumber(one: number | string, key: string, measure: Measure, t: Translate): string {
  if (typeof one === 'number') return numberText(key, one, one, measure);
  // Days of the data are written as ISO 8601.
  if (isIsoDate(one)) return sayDay(one, measure.locale === 'en-US' ? 'en-US' : measure.settings.book);
  const word = [`factword.${one}`, `row.${one}`].find(isMessageKey);
  return word ? t(word) : one;
}

/** A small length [mm]: in mm, or in inches for who reads inches. */
export function millimetresText(valueMm: number, measure: Measure): string {
  return measure.settings.length === 'in' ? measure.text('length', valueMm / 1000, 2) : `${valueMm}\u00a0mm`;
}
