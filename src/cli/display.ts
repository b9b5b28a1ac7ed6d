// How is a number written for a person: in which units, with how many digits, in which language?
// Leaves out: machine output (JSON and CSV stay in SI with a point).

import type { Language } from '../shared/languages.ts';
import { measureFor } from '../shared/measure.ts';
import { proseInUnits } from '../shared/prose-units.ts';

export type { Language };
export type UnitSystem = 'metric' | 'us';

export interface Display {
  readonly units: UnitSystem;
  readonly language: Language;
  readonly temp: (valueC: number) => string;
  /** Without its unit, for table columns that carry it in their head. */
  readonly bareTemp: (valueC: number) => string;
  readonly tempUnit: string;
  readonly range: (low: number, high: number) => string;
  /** A difference of temperature, to the whole degree unless said otherwise. */
  readonly span: (valueK: number, digits?: number) => string;
  readonly spread: (interval: { readonly low: number; readonly median: number; readonly high: number }) => string;
  readonly watts: (valueW: number) => string;
  readonly kWh: (value: number) => string;
  readonly percent: (valuePct: number) => string;
  readonly length: (valueM: number) => string;
  readonly number: (value: number, digits: number) => string;
  /** A sentence of the pure rooms with its temperatures, lengths and masses in the units shown. */
  readonly prose: (text: string) => string;
}

export const fahrenheitFromC = (valueC: number): number => (valueC * 9) / 5 + 32;
export const celsiusFromF = (valueF: number): number => ((valueF - 32) * 5) / 9;
/** 1 in = 25.4 mm by definition. */
const metresPerInch = 0.0254;

export function displayFor(units: UnitSystem, language: Language): Display {
  const number = (value: number, digits: number): string => {
    const text = value.toLocaleString(language, { minimumFractionDigits: digits, maximumFractionDigits: digits });
    return /^-0[.,]?0*$/.test(text) ? text.slice(1) : text;
  };
  const us = units === 'us';
  const measure = measureFor({ book: 'en', temperature: 'F', length: 'in', mass: 'g' });
  const tempUnit = us ? '°F' : '°C';
  // Tenths of a kelvin mean nothing on a hot heater.
  const bareTemp = (valueC: number): string =>
    number(us ? fahrenheitFromC(valueC) : valueC, us || Math.abs(valueC) >= 100 ? 0 : 1);
  const range = (low: number, high: number): string => `${bareTemp(low)}–${bareTemp(high)}`;
  return {
    units,
    language,
    bareTemp,
    tempUnit,
    range,
    span: (valueK, digits = 0) => (us ? `${number((valueK * 9) / 5, digits)} °F` : `${number(valueK, digits)} K`),
    temp: (valueC) => `${bareTemp(valueC)} ${tempUnit}`,
    spread: ({ low, median, high }) => `${bareTemp(median)} (${range(low, high)})`,
    watts: (valueW) => `${number(valueW, 0)} W`,
    kWh: (value) => `${number(value, value < 100 ? 2 : 0)} kWh`,
    percent: (valuePct) => `${number(valuePct, 0)} %`,
    length: (valueM) => (us ? `${number(valueM / metresPerInch, 1)} in` : `${number(valueM * 100, 0)} cm`),
    number,
    prose: us ? (text) => proseInUnits(text, measure) : (text) => text,
  };
}
