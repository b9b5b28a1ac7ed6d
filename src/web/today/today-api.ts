// The HTTP doors onto the list of today, aftercare, calendars and own figures, and the shapes that come back.
import type { TriageAnswer } from '../../animal/triage.ts';
import type { Source } from '../../husbandry/fact.ts';
import type { AftercareAnswers, Concern } from '../../proving/aftercare/answer.ts';
import type { OwnShare } from '../../proving/aftercare/own-share.ts';
import type { Question, TaskKind } from '../../proving/aftercare/task.ts';
import { ask } from '../animal/animal-api.ts';
import type { PaperChoice } from '../settings/paper-query.ts';

export interface TaskShown {
  readonly key: string;
  readonly kind: TaskKind;
  readonly from: string;
  readonly to: string;
  readonly blanks: Readonly<Record<string, string | number>>;
  readonly ask: readonly Question[];
  readonly sources: readonly string[];
  readonly state: 'later' | 'due' | 'overdue' | 'done' | 'set-aside';
  readonly doneOn?: string | null;
  readonly doneEvent?: string | null;
}

export interface Named {
  readonly placementId: string;
  readonly title: string;
  readonly callName: string;
  readonly speciesId: string;
}

export interface DuePlace {
  readonly to: string;
  readonly placementId: string;
  readonly key: string;
}

export type TaskRow = TaskShown & Named;

export interface TodayAnswer {
  readonly today: string;
  readonly waiting: number;
  readonly counts: { readonly overdue: number; readonly due: number; readonly most: number };
  readonly concerns: readonly (Named & {
    readonly eventId: string;
    readonly urgency: 'now' | 'look';
    readonly told: { readonly on: string; readonly via: 'keeper' | 'desk'; readonly concerns: readonly Concern[] };
  })[];
  readonly tasks: readonly TaskRow[];
  readonly next: DuePlace | null;
  readonly done: readonly TaskRow[];
  readonly silent: readonly {
    readonly sourceId: string;
    readonly enquiryId: string;
    readonly title: string;
    readonly label: string;
    readonly lastAt: string | null;
  }[];
  readonly animals: readonly {
    readonly animalId: string;
    readonly callName: string;
    readonly speciesId: string;
    readonly enclosure: string;
    readonly what: 'vet' | 'treatment' | 'quarantine-may-end' | 'quarantine-ends' | 'mites-end';
    readonly on: string | null;
  }[];
  readonly held: number;
  readonly feeding: { readonly due: number; readonly overdue: number; readonly names: readonly string[] };
  readonly round: { readonly left: number; readonly of: number };
  readonly placements: readonly (Named & { readonly next: 'plan' | 'proof' | 'animal' | 'release' })[];
  readonly enquiries: readonly {
    readonly enquiryId: string;
    readonly title: string;
    readonly next: 'questions' | 'box' | 'plan' | 'proof' | 'placement';
  }[];
  readonly instruments: readonly { readonly id: string; readonly name: string; readonly dueOn: string | null }[];
  readonly fresh: boolean;
}

export type ToldBody =
  | {
      readonly what: 'answer';
      readonly task: TaskShown;
      readonly on: string;
      readonly via: 'keeper' | 'desk';
      readonly answers: AftercareAnswers;
      readonly settles: boolean;
      readonly concerns: readonly Concern[];
    }
  | { readonly what: 'not-reached'; readonly task: TaskShown; readonly on: string }
  | { readonly what: 'set-aside'; readonly task: TaskShown; readonly on: string; readonly why: string };

export interface Told {
  readonly id: string;
  readonly at: string;
  readonly by: string;
  readonly lookedAt: boolean;
  readonly body: ToldBody;
}

export interface AftercareSheet extends Named {
  readonly today: string;
  readonly latest: string;
  readonly enquiryId: string;
  readonly animalId: string;
  readonly released: {
    readonly on: string;
    readonly diedOn: string | null;
    readonly returnedOn: string | null;
    readonly heardOn: string | null;
  } | null;
  readonly tasks: readonly TaskShown[];
  readonly told: readonly Told[];
  readonly feeds: readonly FeedShown[];
  /** By the keys that tasks name. */
  readonly sources: Readonly<Record<string, Pick<Source, 'title' | 'year' | 'kind' | 'read'>>>;
}

export interface FeedShown {
  readonly id: string;
  readonly language: string;
  readonly at: string;
  readonly by: string;
}

export interface TakenStep {
  readonly id: string;
  readonly again: boolean;
  readonly triage: TriageAnswer | null;
}

export type Step =
  | { readonly what: 'answer'; readonly key: string; readonly on: string; readonly answers: AftercareAnswers }
  | { readonly what: 'not-reached'; readonly key: string }
  | { readonly what: 'set-aside'; readonly key: string; readonly why: string }
  | { readonly what: 'undone' | 'looked-at'; readonly of: string };

export interface OwnFigure {
  readonly speciesId: string | null;
  readonly died: OwnShare;
  readonly returned: OwnShare;
}
export interface OwnFigures {
  readonly today: string;
  readonly waiting: number;
  readonly horizons: readonly { readonly days: number; readonly figures: readonly OwnFigure[] }[];
}

const placement = (id: string): string => `/api/placements/${encodeURIComponent(id)}`;

export const readToday = () => ask<TodayAnswer>('/api/today');
export const readMore = (behind: DuePlace) =>
  ask<Pick<TodayAnswer, 'tasks' | 'next'>>(`/api/today?${new URLSearchParams({ ...behind }).toString()}`);
export const readAftercare = (id: string) => ask<AftercareSheet>(`${placement(id)}/aftercare`);
export const sendStep = (id: string, token: string, step: Step) =>
  ask<TakenStep>(`${placement(id)}/aftercare`, 'POST', { token, step });
export const readOwnFigures = () => ask<OwnFigures>('/api/own-figures');

/** @param id null: the calendar of the whole branch */
const feeds = (id: string | null): string => (id === null ? '/api/calendar-feeds' : `${placement(id)}/calendar-feeds`);
export const listFeeds = () => ask<{ readonly feeds: readonly FeedShown[] }>(feeds(null));
export const giveFeed = (id: string | null, { language, temperature, length, mass }: PaperChoice) =>
  ask<{ readonly id: string; readonly secret: string }>(feeds(id), 'POST', { language, temperature, length, mass });
export const takeBackFeed = (id: string | null, feedId: string) => ask(`${feeds(id)}/${feedId}/withdraw`, 'POST', {});
