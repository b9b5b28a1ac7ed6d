// How is a number written for a person: in which units, with how many digits, in which language?
// Leaves out: machine output (JSON and CSV stay in SI with a point).

import type { Language } from '../shared/languages.ts';

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
  /** A difference of temperature, to the whole degree. */
  readonly span: (valueK: number) => string;
  readonly spread: (interval: { readonly low: number; readonly median: number; readonly high: number }) => string;
  readonly watts: (valueW: number) => string;
  readonly kWh: (value: number) => string;
  readonly percent: (valuePct: number) => string;
  readonly length: (valueM: number) => string;
  readonly number: (value: number, digits: number) => string;
  /** A sentence's temperatures in the units shown: "30 to 32 °C", "31.0 °C (29.9 to 32.1)", "at most 38 °C, better 35". */
  readonly tempsIn: (text: string) => string;
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
    span: (valueK) => (us ? `${number((valueK * 9) / 5, 0)} °F` : `${number(valueK, 0)} K`),
    temp: (valueC) => `${bareTemp(valueC)} ${tempUnit}`,
    spread: ({ low, median, high }) => `${bareTemp(median)} (${range(low, high)})`,
    watts: (valueW) => `${number(valueW, 0)} W`,
    kWh: (value) => `${number(value, value < 100 ? 2 : 0)} kWh`,
    percent: (valuePct) => `${number(valuePct, 0)} %`,
    length: (valueM) => (us ? `${number(valueM / metresPerInch, 1)} in` : `${number(valueM * 100, 0)} cm`),
    number,
    tempsIn: us ? inFahrenheit : (text) => text,
  };
}

const decimal = String.raw`(-?\d+(?:\.\d+)?)`;
const withSpread = new RegExp(`${decimal} °C \\(${decimal}( to | bis |–)${decimal}\\)`, 'g');
const withBetter = new RegExp(`${decimal} °C, (better|besser) ${decimal}( °C)?`, 'g');
const lowToHigh = new RegExp(`${decimal}( to | bis |–)${decimal} °C`, 'g');
const alone = new RegExp(`${decimal} °C`, 'g');

function inFahrenheit(text: string): string {
  const f = (valueC: string): string => fahrenheitFromC(Number(valueC)).toFixed(0);
  return text
    .replace(
      withSpread,
      (_, median: string, low: string, to: string, high: string) => `${f(median)} °F (${f(low)}${to}${f(high)})`,
    )
    .replace(
      withBetter,
      (_, most: string, word: string, better: string, unit = '') =>
        `${f(most)} °F, ${word} ${f(better)}${unit && ' °F'}`,
    )
    .replace(lowToHigh, (_, low: string, to: string, high: string) => `${f(low)}${to}${f(high)} °F`)
    .replace(alone, (_, value: string) => `${f(value)} °F`);
}
