// The sentences of a proof in plain English; other languages are made from the ids and figures.
import type { Cause } from '../diagnosis/cause.ts';
import type { ForecastNeed } from './forecast-needs.ts';
import type { ReadNeed } from './read-needs.ts';

const placeWords: Readonly<Record<string, string>> = {
  'basking-surface': 'basking surface',
  'warm-air': 'warm-end air',
  'warm-hide': 'warm hide',
  'cool-hide': 'cool hide',
  'cool-air': 'cool-end air',
  'cool-floor': 'cool-end floor',
  perch: 'perch',
  probe: 'probe',
  room: 'room',
};
export const placeWord = (place: string | null): string => (place === null ? 'place' : (placeWords[place] ?? place));

export const needWords: Readonly<Record<ReadNeed['id'], string>> = {
  'basking-surface': 'basking surface by day',
  'night-warmth': 'warm end at night',
  'cool-end': 'cool end by day',
  'hottest-surface': 'hottest surface',
  humidity: 'humidity',
};

export const forecastWords: Readonly<Record<ForecastNeed['id'], string>> = {
  'coldest-night-warmth': 'warm end on the coldest night',
  'coldest-day-basking': 'basking surface on the coldest day',
  'hottest-day-cool-end': 'cool end on the hottest day',
  'hottest-surface-forecast': 'hottest surface in reach',
};

export const causeWords: Readonly<Record<Cause, string>> = {
  'no-thermostat': 'the heater runs without a thermostat',
  'stuck-on': 'the thermostat sticks on',
  'stuck-off': 'the heat is gone: thermostat off, fuse or heater',
  'probe-cool-end': "the thermostat's probe lies at the cool end",
  'probe-fallen': "the thermostat's probe has fallen out",
  'dial-set-to-basking': 'the dial is set to the basking temperature',
  'deep-substrate': 'the mat lies under too much substrate',
  'sun-on-glass': 'sun falls on the front',
  'timer-shifted': "the timer's clock is wrong",
  'wet-sensor': 'the humidity sensor lies in the wet',
};

const unitOf = (n: ReadNeed): string => (n.quantity === 'rhPct' ? '%' : '°C');
const band = (low: number | null, high: number | null, unit: string): string =>
  low !== null && high !== null
    ? `${low} to ${high} ${unit}`
    : low !== null
      ? `at least ${low} ${unit}`
      : `at most ${high} ${unit}`;

/** Why a need is held, open or failed. */
export function needSentence(n: ReadNeed): string {
  const unit = unitOf(n);
  const wanted = band(n.low, n.high, unit);
  const name = needWords[n.id];
  if (n.state === 'not-read' || n.worst === null || n.margin === null)
    return `Nobody read the ${name}; wanted is ${wanted}.`;
  const worst = `${n.worst.toFixed(1)} ± ${n.error.toFixed(1)} ${unit} at the ${placeWord(n.place)}`;
  const size = Math.abs(n.margin).toFixed(1);
  const k = n.quantity === 'rhPct' ? 'points' : 'K';
  if (n.state === 'held') return `The ${name} held: ${worst}, wanted ${wanted}.`;
  if (n.state === 'failed')
    return `The ${name} fails: ${worst}, wanted ${wanted}; ${size} ${k} outside, more than the instrument may be off.`;
  return n.margin >= 0
    ? `The ${name} is inside by ${size} ${k}, less than the instrument may be off (${n.error.toFixed(1)} ${k}): ${worst}, wanted ${wanted}.`
    : `The ${name} is outside by ${size} ${k}, which the instrument's error may explain: ${worst}, wanted ${wanted}.`;
}

export function forecastSentence(n: ForecastNeed): string {
  const { low, median, high } = n.foundC;
  const found = `${median.toFixed(1)} °C (${low.toFixed(1)} to ${high.toFixed(1)})`;
  const share = Math.round(100 * n.shareHolding);
  return `Forecast, ${forecastWords[n.id]} at ${n.roomC.toFixed(1)} °C in the room: ${found}, wanted ${band(n.low, n.high, '°C')}; it holds in ${share} of 100 boxes that agree with the readings.`;
}
