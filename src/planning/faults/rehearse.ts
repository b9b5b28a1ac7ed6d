// Rehearses the whole catalogue on one plan: each fault in several versions of the box, with its guards, ranked by harm and
// likelihood. A generator, so that each finding can be shown as it comes and the rest left off.

import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { isSaying, type Saying, told } from '../../husbandry/coded.ts';
import type { FaultCase } from '../../husbandry/fact-tables.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import type { Parameters } from '../../physics/parameters.ts';
import { boxGeometry, modelFrom, settleBox } from '../../physics/simulate.ts';
import { drawMembers, type Priors } from '../ensemble.ts';
import { intervalOf } from '../interval.ts';
import { baskingAimC, momentsOf } from '../member.ts';
import { alarmOf } from './alarm.ts';
import { mainThermostatOf } from './alterations.ts';
import type { Crossing, FaultFinding, FaultRehearsal } from './fault-answer.ts';
import { type FaultRow, type FaultRunPlan, geometriesOf, runFault } from './fault-run.ts';
import { guardFindings } from './guards.ts';
import { crossed, type HarmKind, type HarmLine, harmLines, readingFor } from './harm-lines.ts';
import { powerCutCard } from './power-cut.ts';
import { type FaultAims, type Rehearsal, rehearsals } from './rehearsals.ts';

export interface RehearseInput {
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  readonly cases: readonly FaultCase[];
  /** Versions of the box for the spread; 8 is usual, the first is the best estimate. */
  readonly versions: number;
  readonly seed: number;
  /** Only these faults; all when absent. */
  readonly only?: readonly string[];
}

export const usualVersions = 8;
/** Time steps [s]: a five-minute step follows a box whose air answers in minutes and walls in hours; 30 s where a
 *  thermostat's switching itself is the question. */
const stepS = 300;
const fineStepS = 30;

const harmWeight: Readonly<Record<FaultCase['harm'], number>> = { comfort: 1, illness: 3, death: 9, fire: 9 };
const likelihoodWeight: Readonly<Record<FaultCase['likelihood'], number>> = { rare: 1, 'now-and-then': 2, common: 3 };
/** A fault that crosses no line on this plan keeps this share of its rank: the model does not know everything. */
const harmlessShare = 0.1;

export function* rehearseFaults(input: RehearseInput): Generator<FaultFinding, FaultRehearsal> {
  const { climate, seed } = input;
  const members = drawMembers(input.priors, Math.max(1, input.versions), seed);
  const lines = harmLines(climate);
  const aims = aimsOf(input, members[0]!);
  const findings: FaultFinding[] = [];
  for (const rehearsal of rehearsals) {
    const found = input.cases.find((c) => c.id === rehearsal.id);
    if (!found || (input.only && !input.only.includes(rehearsal.id))) continue;
    const finding = rehearse(rehearsal, found, input, members, aims, lines);
    findings.push(finding);
    yield finding;
  }
  const sorted = [...findings].sort((a, b) => b.rank - a.rank || (a.id < b.id ? -1 : 1));
  return { findings: sorted, powerCut: powerCutCard(input, findings), lines, versions: members.length, seed };
}

function aimsOf(input: RehearseInput, best: Parameters): FaultAims {
  const model = modelFrom(boxGeometry(input.enclosure, input.materials), best);
  const day = settleBox(model, momentsOf(input.enclosure).winterDay);
  const main = mainThermostatOf(input.enclosure);
  const h = input.enclosure.heaters.findIndex((x) => x.thermostatId === input.enclosure.thermostats[main]?.id);
  const watts = day.now[h]?.powerW ?? 0;
  const rated = (input.enclosure.heaters[h]?.powerW ?? 1) * best.heaterPower;
  return { wantedBaskingC: baskingAimC(input.climate), winterDutyFrac: Math.min(1, watts / rated) };
}

/** The run of one rehearsal on one home; a sentence when the home cannot have the fault. */
export function faultPlan(rehearsal: Rehearsal, enclosure: Enclosure, aims: FaultAims): FaultRunPlan | Saying {
  const faulty = rehearsal.altered?.(enclosure, aims) ?? enclosure;
  if (isSaying(faulty)) return faulty;
  const day = enclosure.room[rehearsal.season];
  const { startH } = rehearsal;
  return {
    normal: enclosure,
    faulty,
    roomDay: rehearsal.room?.(day) ?? day,
    startH,
    hours: rehearsal.hours,
    stepS: rehearsal.fineSteps ? fineStepS : stepS,
    options: (model) => fromStart(rehearsal.options?.(model, aims) ?? {}, startH),
  };
}

/** Faults are written as beginning at hour 0; the run counts hours of the day. */
function fromStart(o: ReturnType<FaultRunPlan['options']>, startH: number): ReturnType<FaultRunPlan['options']> {
  return {
    ...o,
    ...(o.stuck ? { stuck: { ...o.stuck, fromH: startH } } : {}),
    ...(o.dead ? { dead: { ...o.dead, fromH: startH } } : {}),
    ...(o.powerCut ? { powerCut: { fromH: startH, toH: startH + o.powerCut.toH } } : {}),
  };
}

function rehearse(
  rehearsal: Rehearsal,
  found: FaultCase,
  input: RehearseInput,
  members: readonly Parameters[],
  aims: FaultAims,
  lines: Readonly<Record<HarmKind, HarmLine>>,
): FaultFinding {
  const plan = faultPlan(rehearsal, input.enclosure, aims);
  const base = { id: rehearsal.id, case: found, hoursWatched: rehearsal.hours, versions: members.length };
  const weight = harmWeight[found.harm] * likelihoodWeight[found.likelihood];
  if (isSaying(plan)) {
    const nothing = { rows: [], crossings: [], first: null, shows: null, alarm: null, guards: [] };
    return { ...base, played: plan.en, told: told(plan), skipped: true, ...nothing, rank: 0 };
  }
  const geometries = geometriesOf(plan, input.materials);
  const runs = members.map((parameters) => seen(rehearsal, runFault(plan, geometries, parameters)));
  const crossings = crossingsOf(runs, lines, rehearsal.feared);
  // what the fault is feared for decides; other lines are told beside it
  const first = crossings.find((c) => rehearsal.feared.includes(c.line.kind)) ?? null;
  const rows = runs[0]!;
  return {
    ...base,
    played: rehearsal.played.en,
    told: told(rehearsal.played),
    skipped: false,
    rows,
    crossings,
    first,
    shows: { atStart: rows[0]!, atWorst: worstRow(rows, first?.line ?? lines[rehearsal.feared[0]!]) },
    alarm: alarmOf(rows, input.climate, first),
    guards: first ? guardFindings(rehearsal, input, aims, members[0]!, first.line, rows) : [],
    rank: weight * (first ? Math.max(harmlessShare, first.shareFrac) : harmlessShare),
  };
}

/** A heater that can be burrowed down to is a surface in reach. */
export const seen = (rehearsal: Rehearsal, rows: readonly FaultRow[]): readonly FaultRow[] =>
  rehearsal.buried ? rows.map((r) => ({ ...r, surfaceC: Math.max(r.surfaceC, r.heaterC) })) : rows;

/** Lines crossed after the start, feared ones first, then by how many versions cross them. */
function crossingsOf(
  runs: readonly (readonly FaultRow[])[],
  lines: Readonly<Record<HarmKind, HarmLine>>,
  feared: readonly HarmKind[],
): Crossing[] {
  const all = Object.values(lines).map((line): Crossing => {
    const hours = runs.map((rows) => hoursTo(rows, line)).filter((h): h is number => h !== null);
    return { line, shareFrac: hours.length / runs.length, hours: hours.length > 0 ? intervalOf(hours) : null };
  });
  const order = (c: Crossing) => (feared.includes(c.line.kind) ? feared.indexOf(c.line.kind) : 9);
  return all.filter((c) => c.shareFrac > 0).sort((a, b) => order(a) - order(b) || b.shareFrac - a.shareFrac);
}

/** Hours until a line is crossed, between two rows by a straight line; null when it is not. Crossed from the start counts as 0. */
export function hoursTo(rows: readonly FaultRow[], line: HarmLine): number | null {
  for (let i = 0; i < rows.length; i++) {
    const value = readingFor(line.kind, rows[i]!);
    if (!crossed(line, value)) continue;
    if (i === 0) return 0;
    const before = readingFor(line.kind, rows[i - 1]!);
    const share = (line.at - before) / (value - before);
    return rows[i - 1]!.hour + share * (rows[i]!.hour - rows[i - 1]!.hour);
  }
  return null;
}

/** The row furthest beyond, or nearest to, a line. */
export function worstRow(rows: readonly FaultRow[], line: HarmLine): FaultRow {
  const sign = line.side === 'above' ? 1 : -1;
  return rows.reduce((a, b) => (sign * (readingFor(line.kind, b) - readingFor(line.kind, a)) > 0 ? b : a));
}
