// The HTTP doors onto animals, and the shapes that come back, made of the types of the pure rooms.
import type { AnimalEvent, EventKind } from '../../animal/event.ts';
import type { Comparison, ExaminationBody, ExaminationStep, ExaminationVerdict } from '../../animal/examination.ts';
import type { MealAdvice, NextFeed } from '../../animal/feeding.ts';
import type { Fitness, FitnessAnswer } from '../../animal/fitness.ts';
import type { GrowthBand, LengthPoint, MoveUp } from '../../animal/growth.ts';
import type { MassFinding, MassPoint } from '../../animal/mass-series.ts';
import type { StockNeed } from '../../animal/prey-stock.ts';
import type { HeadingFinding, RegisterEntry } from '../../animal/register.ts';
import type { RoundLine, RoundSum } from '../../animal/round.ts';
import type { MajorAxis } from '../../animal/scaled-mass-index.ts';
import type { SizeCheck } from '../../animal/size-check.ts';
import type { TriageAnswer, TriageFacts } from '../../animal/triage.ts';
import type { LifeStage } from '../../physics/enclosure.ts';
import type { Fault } from '../../shared/fault.ts';
import { send } from '../api/send.ts';

export type Asked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: number; readonly faults: readonly Fault[] };

/** status 0: no answer came at all. */
export async function ask<T>(
  path: string,
  method: 'GET' | 'POST' | 'PUT' = 'GET',
  body?: object,
  signal: AbortSignal | null = null,
): Promise<Asked<T>> {
  try {
    const init = body
      ? { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body), signal }
      : { method, signal };
    const response = await send(path, init);
    const json: unknown = await response.json().catch(() => null);
    if (response.ok) return { ok: true, value: json as T };
    return { ok: false, status: response.status, faults: (json as { faults?: readonly Fault[] } | null)?.faults ?? [] };
  } catch {
    return { ok: false, status: 0, faults: [] };
  }
}

export interface AnimalLine {
  readonly id: string;
  readonly callName: string;
  readonly speciesId: string;
  readonly enclosure: string;
  readonly gone: boolean;
  readonly massG: number | null;
  readonly fitness: Fitness;
  readonly feed: NextFeed['state'];
  readonly feedFrom: string | null;
  readonly missing: number;
}

export interface HistoryRow {
  readonly id: string;
  readonly kind: EventKind;
  readonly on: string;
  readonly body: Readonly<Record<string, unknown>> | null;
  readonly corrects: string | null;
  readonly reason: string;
  readonly recordedAt: string;
  readonly by: string;
}

export interface AnimalSheet {
  readonly id: string;
  readonly today: string;
  readonly enclosure: string;
  readonly gone: boolean;
  readonly speciesId: string;
  readonly entry: RegisterEntry;
  readonly stage: LifeStage | null;
  readonly massG: number | null;
  readonly totalLengthCm: number | null;
  readonly fitness: FitnessAnswer;
  readonly feeding: NextFeed & { readonly advice: MealAdvice | null };
  readonly mass: {
    readonly finding: MassFinding;
    readonly series: readonly MassPoint[];
    readonly next: { readonly on: string; readonly overdue: boolean };
  };
  readonly length: {
    readonly series: readonly LengthPoint[];
    readonly check: SizeCheck | null;
    readonly index: (MajorAxis & { readonly scaledG: number }) | null;
  };
  readonly growth: { readonly band: GrowthBand | null; readonly ownCmPerMonth: number | null };
  readonly examination: { readonly drafted: boolean };
  readonly register: readonly HeadingFinding[];
  readonly photos: readonly AnimalEvent[];
  readonly facts: readonly {
    readonly field: string;
    readonly value: string;
    readonly reason: string;
    readonly at: string;
    readonly by: string;
  }[];
  readonly history: readonly HistoryRow[];
}

export interface Examination {
  readonly steps: readonly ExaminationStep[];
  readonly draft: { readonly document: ExaminationBody } | null;
  readonly last: { readonly on: string; readonly by: string; readonly body: ExaminationBody } | null;
  readonly callName: string;
  readonly speciesId: string;
}

export interface Finished {
  readonly verdict: ExaminationVerdict;
  readonly comparison: Comparison;
}

export interface RoundAnswer {
  readonly today: string;
  readonly lines: readonly RoundLine[];
  readonly sum: RoundSum;
}

export interface InspectionAnswer {
  readonly place: string;
  readonly years: number;
  readonly animals: readonly {
    readonly id: string;
    readonly enclosure: string;
    readonly gone: boolean;
    readonly speciesId: string;
    readonly entry: RegisterEntry;
    readonly headings: readonly HeadingFinding[];
    readonly corrections: readonly {
      readonly what: string;
      readonly was: unknown;
      readonly now: unknown;
      readonly at: string;
      readonly by: string;
      readonly reason: string;
    }[];
  }[];
}

const animal = (id: string): string => `/api/animals/${encodeURIComponent(id)}`;

export const listAnimals = () =>
  ask<{ readonly today: string; readonly animals: readonly AnimalLine[] }>('/api/animals');
export const readAnimal = (id: string) => ask<AnimalSheet>(animal(id));
export const takeIn = (body: object) => ask<{ readonly id: string }>('/api/animals', 'POST', body);
export const writeEntry = (id: string, entry: object) =>
  ask<{ readonly id: string }>(`${animal(id)}/entries`, 'POST', entry);
export const withdrawEntry = (id: string, entryId: string, reason: string) =>
  ask(`${animal(id)}/entries/${entryId}/correction`, 'POST', { body: null, reason });
export const amendEntry = (id: string, entryId: string, body: object, on: string, reason: string) =>
  ask(`${animal(id)}/entries/${entryId}/correction`, 'POST', { body, on, reason });
export const putRegister = (id: string, values: RegisterEntry, reason: string) =>
  ask(`${animal(id)}/register`, 'PUT', { values, reason });
export const readMoveUp = (id: string, boxLengthCm: number) =>
  ask<{ readonly moveUp: MoveUp | null }>(`${animal(id)}/move-up?boxLengthCm=${boxLengthCm}&lengthShare=1`);
export const keepPhoto = (id: string, data: string, of: string) =>
  ask<{ readonly photoId: string }>(`${animal(id)}/photos`, 'POST', { data, of });
export const readExamination = (id: string) => ask<Examination>(`${animal(id)}/examination`);
export const saveExamination = (id: string, body: ExaminationBody) => ask(`${animal(id)}/examination`, 'PUT', body);
export const finishExamination = (id: string, body: ExaminationBody) =>
  ask<Finished>(`${animal(id)}/examination`, 'POST', body);
export const readRound = () => ask<RoundAnswer>('/api/round');
export const readInspection = (search: string) =>
  ask<InspectionAnswer>(`/api/inspection?search=${encodeURIComponent(search)}`);
export const readTriage = () => ask<TriageFacts>('/api/triage');
export const takeCall = (body: object) => ask<TriageAnswer>('/api/triage', 'POST', body);
export const readPrey = (days: number) => ask<StockNeed>(`/api/prey?days=${days}`);
