// Where the heater of a kit comes off its stop between the coldest and the hottest day or night, read off the lines of one
// version: nothing is solved for it. The plan finds the same day by solving (turning-point.ts); search.test.ts holds both together.
import type { JudgedTurn } from '../judged-member.ts';
import { flatOutFrac } from '../turning-point.ts';
import { type MemberSurface, onLine, perWatt, type WattLine } from './surface.ts';

interface Held {
  /** Power that holds the wanted basking surface, were the heater strong enough [W]. */
  readonly powerW: number;
  readonly roomC: number;
  readonly hottestC: number;
}

/** @param aimC basking temperature that a keeper aims at   @param ratedW power of the day heater, tolerance included */
export function turnDayOnLines(surface: MemberSurface, aimC: number, ratedW: number): JudgedTurn | null {
  if (surface.reaches && ratedW >= flatOutFrac * surface.day.highW) return null;
  const [cold, mid, hot] = [surface.day, surface.mid, surface.summer].map((line) => heldOn(line, aimC)) as [
    Held,
    Held,
    Held,
  ];
  if (flatOutFrac * cold.powerW <= ratedW || hot.powerW >= ratedW) return null;
  const [from, to] = mid.powerW > ratedW ? [mid, hot] : [cold, mid];
  const share = (from.powerW - ratedW) / (from.powerW - to.powerW);
  return {
    roomC: from.roomC + share * (to.roomC - from.roomC),
    places: { 'hottest-reachable': from.hottestC + share * (to.hottestC - from.hottestC) },
  };
}

function heldOn(line: WattLine, aimC: number): Held {
  const powerW = line.highW + (aimC - onLine(line, 'basking-surface', line.highW)) / perWatt(line, 'basking-surface');
  return { powerW, roomC: line.roomC, hottestC: onLine(line, 'hottest-reachable', powerW) };
}

/** @param setC dial at night   @param ratedW power of the heater that works at night, tolerance included */
export function turnNightOnLines(
  { night, summerNight }: MemberSurface,
  setC: number,
  bandK: number,
  ratedW: number,
): JudgedTurn | null {
  // flat out down to half a band below the dial; the night line moves with the room as it is
  const warmerK = setC - bandK / 2 - onLine(night, 'probeC', ratedW);
  if (warmerK <= 0 || warmerK >= summerNight.roomC - night.roomC) return null;
  const flatOutC = onLine(night, 'hottest-reachable', ratedW);
  return { roomC: night.roomC + warmerK, places: { 'hottest-reachable': flatOutC + warmerK } };
}
