// Which numbers an option takes, in which unit, and what holds when it is left out: read by the commands, their help and the
// manual page alike. Leaves out what an option means.
import type { Messages } from './messages/en.ts';

export interface OptionRange {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly whole?: true;
  /** Used when the option is left out; the tests hold these equal to the rooms that they come from. */
  readonly usual?: number;
}

const roomC = { low: -10, high: 50, unit: '°C' } as const;

export const optionRanges = {
  /** Below ten members an interval of 90 % means nothing; above two thousand nobody waits (our choice). */
  members: { low: 10, high: 2000, unit: '', whole: true, usual: 64 },
  seed: { low: 0, high: 4_294_967_295, unit: '', whole: true, usual: 1 },
  years: { low: 1, high: 30, unit: '', whole: true, usual: 5 },
  tariff: { low: 0, high: 10, unit: '' },
  room: roomC,
  low: roomC,
  high: roomC,
  rh: { low: 5, high: 100, unit: '%' },
  sun: { low: 0, high: 1200, unit: 'W/m²' },
  /** Of each heater. */
  watts: { low: 0, high: 500, unit: 'W' },
  nights: { low: 1, high: 14, unit: '', whole: true, usual: 3 },
  clock: { low: -12, high: 14, unit: 'h' },
  check: { low: -5, high: 5, unit: '°C' },
} as const satisfies Readonly<Record<string, OptionRange>>;

export type RangedOption = keyof typeof optionRanges;

/** "relative humidity of the room (5 to 100 %)"; temperatures of rooms in °F too, as --units us reads them. */
export function rangedText(text: string, name: RangedOption, { check, help }: Messages): string {
  const { low, high, unit, usual }: OptionRange = optionRanges[name];
  const range = (from: number, to: number, of: string): string =>
    `${check.range(String(from), String(to))}${of === '' ? '' : ` ${of}`}`;
  const isRoom = optionRanges[name] === roomC;
  const inF = isRoom ? ` = ${range(low * 1.8 + 32, high * 1.8 + 32, '°F')}` : '';
  return `${text} (${range(low, high, unit)}${inF}${usual === undefined ? '' : `; ${help.unlessGiven(String(usual))}`})`;
}
