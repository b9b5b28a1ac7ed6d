// What the simulator answers at rest, by day and by night, for a few room temperatures: enough to read off any settled
// window between them. One such table costs a handful of steady solutions (milliseconds each), a simulated week would
// cost seconds. Leaves out transients: windows are settled by choice.
import type { SteadyAnswer } from '../../physics/answer.ts';
import {
  type BoxGeometry,
  modelFrom,
  type SettledBox,
  type SteadyConditions,
  settleBox,
} from '../../physics/simulate.ts';
import { steadyAnswer } from '../../physics/steady-answer.ts';
import { type LogPlace, logPlaces } from '../reading-log.ts';
import { parametersAt, type Unknowns } from './unknowns.ts';

/** Outputs in order: every place of a log (room excepted), humidity at the warm and the cool end, power. */
export const outputs = [...logPlaces.filter((p) => p !== 'room'), 'warm-rh', 'cool-rh', 'power'] as const;
export type Output = (typeof outputs)[number];
export const outputIndex = (name: Output): number => outputs.indexOf(name);

/** values[room][output]; NaN where a place does not exist. */
export type PeriodTable = readonly Float64Array[];

export interface ResponseTable {
  readonly day: PeriodTable | null;
  readonly night: PeriodTable | null;
}

export interface ResponsePlan {
  readonly geometry: BoxGeometry;
  readonly unknowns: Unknowns;
  readonly roomRhPct: number;
  /** Ascending room temperatures at which the table stands, per period; empty when no window needs it. */
  readonly dayRoomsC: readonly number[];
  readonly nightRoomsC: readonly number[];
}

/** Room temperatures that span the windows: two or three, at least 2 K apart. */
export function roomNodes(roomsC: readonly number[]): number[] {
  if (roomsC.length === 0) return [];
  const low = Math.min(...roomsC);
  const high = Math.max(...roomsC);
  const middle = (low + high) / 2;
  const half = Math.max(1, (high - low) / 2);
  return high - low > 4 ? [middle - half, middle, middle + half] : [middle - half, middle + half];
}

export interface Responder {
  readonly at: (scores: ArrayLike<number>) => ResponseTable;
}

/** A responder that starts each solution from the last one found at the same room. */
export function responder(plan: ResponsePlan): Responder {
  const warm = new Map<string, SettledBox>();
  const period = (scores: ArrayLike<number>, isDay: boolean, roomsC: readonly number[]): PeriodTable | null => {
    if (roomsC.length === 0) return null;
    const model = modelFrom(plan.geometry, parametersAt(plan.unknowns, scores));
    return roomsC.map((roomC) => {
      const conditions: SteadyConditions = { roomC, roomRhPct: plan.roomRhPct, sunWPerM2: 0, isDay };
      const key = `${isDay}${roomC}`;
      const settled = settleBox(model, conditions, warm.get(key));
      if (!warm.has(key)) warm.set(key, settled);
      return outputRow(steadyAnswer(model, conditions, settled));
    });
  };
  return {
    at: (scores) => ({
      day: period(scores, true, plan.dayRoomsC),
      night: period(scores, false, plan.nightRoomsC),
    }),
  };
}

/** The outputs of one steady answer, in order. */
export function outputRow(answer: SteadyAnswer): Float64Array {
  return Float64Array.from(outputs, (o) => {
    if (o === 'warm-rh') return answer.warmRhPct;
    if (o === 'cool-rh') return answer.coolRhPct;
    if (o === 'power') return answer.heaterW.reduce((s, w) => s + w, 0);
    return answer.places[o as Exclude<LogPlace, 'room'>] ?? Number.NaN;
  });
}

/** Value at a room temperature by straight lines between the nodes; beyond them by the slope at the end.
 *  @returns value and its slope by room temperature */
export function readTable(
  table: PeriodTable,
  roomsC: readonly number[],
  output: number,
  roomC: number,
): { readonly value: number; readonly slope: number } {
  let i = 0;
  while (i < roomsC.length - 2 && roomC > roomsC[i + 1]!) i++;
  const slope = (table[i + 1]![output]! - table[i]![output]!) / (roomsC[i + 1]! - roomsC[i]!);
  return { value: table[i]![output]! + slope * (roomC - roomsC[i]!), slope };
}
