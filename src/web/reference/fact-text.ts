// How a fact of a species is written for this person: numbers in their units, known words in their language.
import type { Sourced } from '../../husbandry/need.ts';
import { isMessageKey, type Translate } from '../messages/translate.ts';
import type { Measure, QuantityKind } from '../settings/measure.ts';
import type { Parts } from './reference-api.ts';

type Value = Pick<Sourced, 'value' | 'low' | 'high'> & { readonly values?: readonly (number | string)[] };

/** Kind of quantity that a key names, with the factor to the stored unit; null when written bare. */
export function kindOf(key: string): { readonly kind: QuantityKind; readonly toStored: number } | null {
  if (/[a-z]C$/.test(key)) return { kind: 'temperature', toStored: 1 };
  if (key.endsWith('Pct')) return { kind: 'percent', toStored: 1 };
  if (key.endsWith('Cm')) return { kind: 'length', toStored: 0.01 };
  if (key.endsWith('massG')) return { kind: 'mass', toStored: 1 };
  return null;
}

export function numberText(key: string, low: number, high: number, measure: Measure): string {
  const kind = kindOf(key);
  const digits = [low, high].some((x) => !Number.isInteger(x)) ? 1 : 0;
  if (kind) return measure.span(kind.kind, low * kind.toStored, high * kind.toStored, digits);
  return low === high ? measure.number(low, digits) : `${measure.number(low, digits)}–${measure.number(high, digits)}`;
}

export function factText(key: string, fact: Value | Parts, measure: Measure, t: Translate): string {
  const { low, high, value, values } = fact as Value;
  if (typeof low === 'number' && typeof high === 'number') return numberText(key, low, high, measure);
  if (typeof value === 'number') return numberText(key, value, value, measure);
  if (Array.isArray(values)) return values.join(', ');
  if (typeof value !== 'string') return t('ref.unknown');
  const word = `factword.${value}`;
  return isMessageKey(word) ? t(word) : value;
}
