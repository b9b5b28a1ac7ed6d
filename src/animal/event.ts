// What can happen to an animal and be written down, and how one such entry looks after corrections are applied.
// Leaves out which values are allowed (event-fields.ts) and where entries are kept (records/).

import type { IsoDate } from './calendar.ts';
import type { ExaminationBody } from './examination.ts';

export type FeedingOutcome = 'taken' | 'refused' | 'regurgitated';
export type ClearBy = 'time' | 'tests' | 'both';

/** Body of an entry by its kind. Free texts are as staff or vet wrote them; the program itself names no drug or dose. */
export interface EventBodies {
  readonly weighing: { readonly massG: number };
  readonly length: {
    readonly totalLengthCm: number;
    readonly snoutVentMm: number | null;
    readonly errorMm: number | null;
    readonly how: 'ruler' | 'trace' | 'estimate';
  };
  readonly feeding: {
    readonly preyId: string;
    readonly preyMassG: number | null;
    readonly count: number;
    readonly outcome: FeedingOutcome;
  };
  readonly slough: { readonly stage: 'cloudy' | 'clear' | 'complete' | 'pieces' };
  readonly mites: { readonly seen: boolean; readonly where: string };
  readonly treatment: {
    readonly step: 'start' | 'given' | 'end';
    readonly what: string;
    readonly amount: string;
    readonly vet: string;
  };
  readonly quarantine: {
    readonly step: 'start' | 'end';
    readonly why: string;
    readonly where: string;
    readonly clearBy: ClearBy;
    readonly days: number;
    readonly tests: string;
  };
  readonly test: { readonly name: string; readonly result: 'clear' | 'not-clear' | 'pending'; readonly vet: string };
  readonly movement: { readonly toPlace: string; readonly toBranchId: string; readonly why: string };
  readonly rest: { readonly step: 'start' | 'end'; readonly why: 'winter' | 'laying' | 'birth' };
  readonly round: {
    readonly state: 'well' | 'look' | 'not-seen';
    readonly water: boolean;
    readonly locked: boolean;
    readonly droppings: boolean;
    readonly warmC: number | null;
    readonly coolC: number | null;
    readonly rhPct: number | null;
    readonly note: string;
  };
  readonly examination: ExaminationBody;
  readonly photo: { readonly photoId: string; readonly of: string };
  readonly sale: { readonly outcome: 'sold' | 'rehomed' | 'returned'; readonly reference: string };
  readonly death: {
    readonly foundBy: string;
    readonly signs: string;
    readonly cause: string;
    readonly carcass: string;
    readonly vet: string;
  };
  readonly escape: { readonly step: 'missed' | 'found'; readonly gap: string; readonly told: string };
  readonly call: { readonly complaint: string; readonly next: string; readonly note: string };
  readonly note: { readonly text: string };
}

export type EventKind = keyof EventBodies;

interface EntryOf<K extends EventKind> {
  readonly id: string;
  readonly kind: K;
  /** Day on which it happened. */
  readonly on: IsoDate;
  /** Moment at which it happened, ISO with zone. */
  readonly at: string;
  readonly body: EventBodies[K];
  readonly by: string;
}

export type AnimalEvent = { readonly [K in EventKind]: EntryOf<K> }[EventKind];

/** Entries of one kind, oldest first. */
export function eventsOf<K extends EventKind>(events: readonly AnimalEvent[], kind: K): readonly EntryOf<K>[] {
  const found = events.filter((event) => event.kind === kind) as unknown as EntryOf<K>[];
  return found.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

export function lastOf<K extends EventKind>(events: readonly AnimalEvent[], kind: K): EntryOf<K> | null {
  return eventsOf(events, kind).at(-1) ?? null;
}
