// Somebody calls after the sale: what first? Red flags jump the queue; else the enclosure and its readings, then simple
// outside care for a stated time, then the vet. Never a diagnosis, drug or dose.
import type { Species } from '../husbandry/fact.ts';
import type { Sourced } from '../husbandry/need.ts';
import { rangeOf } from '../husbandry/species-facts.ts';
import type { LifeStage } from '../physics/enclosure.ts';
import type { Spoken } from './care-facts.ts';
import type { Urgency } from './examination.ts';
import { type Reason, reason } from './reason.ts';

export interface RedFlag extends Sourced {
  readonly id: string;
  readonly say: Spoken;
  readonly urgency: Urgency;
}

export interface TriageQuestion {
  readonly id: string;
  readonly say: Spoken;
  /** The answer that means: this may be why. */
  readonly wrongWhen: 'yes' | 'no';
}

export interface Complaint extends Sourced {
  readonly id: string;
  readonly title: Spoken;
  /** Readings (keys of the species record) and questions, in the order to look. */
  readonly look: readonly string[];
  /** Outside care, common practice. */
  readonly care: readonly Spoken[];
  readonly vet: Spoken;
  /** How long outside care may be tried; 0 = not at all. */
  readonly careDays: number;
}

export interface TriageFacts {
  readonly redFlags: readonly RedFlag[];
  readonly questions: readonly TriageQuestion[];
  readonly complaints: readonly Complaint[];
}

export interface TriageCall {
  readonly complaintId: string;
  readonly flags: readonly string[];
  /** Readings by key of the species record, °C or %RH; absent = nobody has read it. */
  readonly readings: Readonly<Record<string, number>>;
  readonly answers: Readonly<Record<string, 'yes' | 'no'>>;
  /** Days since it began. */
  readonly days: number;
  readonly lossPct: number | null;
}

export type TriageNext = 'vet-now' | 'vet-24h' | 'enclosure' | 'ask' | 'care' | 'vet-soon';

export interface TriageAnswer {
  readonly next: TriageNext;
  readonly reasons: readonly Reason[];
  /** Readings or questions that explain it, most telling first. */
  readonly wrong: readonly string[];
  /** Not read or asked yet. */
  readonly open: readonly string[];
  readonly complaint: Complaint | null;
}

const readingKeys = ['baskingSurfaceC', 'warmAirC', 'coolAirC', 'nightMinC', 'rhPct'];

/** True when the reading lies outside what the species wants. A night above the minimum is never wrong here. */
export function readingIsWrong(species: Species, stage: LifeStage, key: string, value: number): boolean {
  const range = rangeOf(species, stage, key);
  if (range === null) return false;
  return value < range.low || (key !== 'nightMinC' && value > range.high);
}

/** @param lossAlarmPct mass loss from which the vet goes before care [%] */
export function triage(
  facts: TriageFacts,
  species: Species,
  stage: LifeStage,
  call: TriageCall,
  lossAlarmPct: number,
): TriageAnswer {
  const complaint = facts.complaints.find((one) => one.id === call.complaintId) ?? null;
  const flags = facts.redFlags.filter((flag) => call.flags.includes(flag.id));
  const look = complaint?.look ?? [];
  const wrong = look.filter((key) => isWrong(facts, species, stage, call, key));
  const open = look.filter((key) => call.readings[key] === undefined && call.answers[key] === undefined);
  const base = { wrong, open, complaint };
  if (flags.length > 0) {
    const now = flags.some((flag) => flag.urgency === 'vet-now');
    return { ...base, next: now ? 'vet-now' : 'vet-24h', reasons: [reason('triage.flag', { n: flags.length })] };
  }
  if (call.lossPct !== null && call.lossPct >= lossAlarmPct)
    return { ...base, next: 'vet-soon', reasons: [reason('triage.loss', { pct: call.lossPct.toFixed(1) })] };
  if (complaint === null) return { ...base, next: 'ask', reasons: [reason('triage.noComplaint')] };
  // Care that is not allowed, or was tried for its time, ends at the vet whatever the enclosure says.
  if (complaint.careDays === 0 || call.days > complaint.careDays)
    return {
      ...base,
      next: 'vet-soon',
      reasons: [
        reason(complaint.careDays === 0 ? 'triage.noCare' : 'triage.tooLong', {
          days: call.days,
          most: complaint.careDays,
        }),
      ],
    };
  if (wrong.length > 0)
    return { ...base, next: 'enclosure', reasons: [reason('triage.enclosure', { n: wrong.length })] };
  if (open.length > 0) return { ...base, next: 'ask', reasons: [reason('triage.open', { n: open.length })] };
  return { ...base, next: 'care', reasons: [reason('triage.care', { most: complaint.careDays })] };
}

function isWrong(facts: TriageFacts, species: Species, stage: LifeStage, call: TriageCall, key: string): boolean {
  const reading = call.readings[key];
  if (readingKeys.includes(key)) return reading !== undefined && readingIsWrong(species, stage, key, reading);
  const question = facts.questions.find((one) => one.id === key);
  return question !== undefined && call.answers[key] === question.wrongWhen;
}
