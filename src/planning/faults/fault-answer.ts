// What a rehearsal answers: whether and when each line is crossed, what the instruments would show, which guard stops it.
import type { Told } from '../../husbandry/coded.ts';
import type { FaultCase } from '../../husbandry/fact-tables.ts';
import type { Interval } from '../plan-answer.ts';
import type { FaultRow } from './fault-run.ts';
import type { HarmKind, HarmLine } from './harm-lines.ts';
import type { GuardKind } from './rehearsals.ts';

export interface Crossing {
  readonly line: HarmLine;
  /** Share of the versions in which it is crossed within the hours watched. */
  readonly shareFrac: number;
  /** Hours from the start of the fault, over the versions that cross it; null when none does. */
  readonly hours: Interval | null;
}

/** Sooner than a tenth of an hour can say: the line is crossed as the fault begins. @param latestH  hours after it began */
export const atOnce = (latestH: number): boolean => latestH < 0.05;

export interface AlarmFinding {
  /** Which instrument would tell, at what reading, how long after the start; null when none would in time. */
  readonly instrument: 'cool-end thermometer' | 'basking thermometer' | 'warm-end thermometer' | 'hygrometer';
  readonly atReading: number;
  readonly unit: '°C' | '%';
  readonly afterH: number;
}

export interface GuardFinding {
  readonly guard: GuardKind;
  readonly say: string;
  readonly told: Told;
  /** The same line with the guard: hours of the best-estimate version, null when it is no longer crossed. */
  readonly hours: number | null;
  readonly stops: boolean;
  /** Worst reading against the line without and with the guard, best-estimate version. */
  readonly worstWithout: number;
  readonly worstWith: number;
}

export interface FaultFinding {
  readonly id: string;
  readonly case: FaultCase;
  /** What was played, or why this home cannot have the fault. */
  readonly played: string;
  /** The same without a language. */
  readonly told: Told;
  readonly skipped: boolean;
  readonly hoursWatched: number;
  /** Versions of the box it was played in. */
  readonly versions: number;
  /** Best-estimate version, a row every quarter of an hour. */
  readonly rows: readonly FaultRow[];
  /** Lines that are crossed and were not crossed before, worst first. */
  readonly crossings: readonly Crossing[];
  /** The first of them that the fault is feared for; null when none of those is crossed. */
  readonly first: Crossing | null;
  /** What the instruments read at the start and at the worst moment of the best-estimate version. */
  readonly shows: { readonly atStart: FaultRow; readonly atWorst: FaultRow } | null;
  readonly alarm: AlarmFinding | null;
  readonly guards: readonly GuardFinding[];
  /** Harm × likelihood × share of the versions that cross a line; for the order only. */
  readonly rank: number;
}

export interface PowerCutCard {
  /** Room of the night that was rehearsed [degC]. */
  readonly roomC: number;
  /** Until the warmest hide is below the night minimum. */
  readonly hoursToLine: Interval | null;
  readonly shareFrac: number;
  /** Warmest place after 1, 3, 6, 12 and 24 hours, best estimate [degC]. */
  readonly after: readonly { readonly hours: number; readonly warmestC: number; readonly coolestC: number }[];
  readonly insulationHours: number | null;
  readonly steps: readonly string[];
  /** The same without a language. */
  readonly toldSteps: readonly Told[];
}

export interface FaultRehearsal {
  readonly findings: readonly FaultFinding[];
  readonly powerCut: PowerCutCard;
  readonly lines: Readonly<Record<HarmKind, HarmLine>>;
  readonly versions: number;
  readonly seed: number;
}
