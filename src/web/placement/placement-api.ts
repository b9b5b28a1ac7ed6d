// The HTTP doors onto placements, and the shapes that come back.
import type { FitnessAnswer } from '../../animal/fitness.ts';
import type { HeadingFinding } from '../../animal/register.ts';
import type { Place } from '../../husbandry/law-rule.ts';
import type { Enclosure, LifeStage } from '../../physics/enclosure.ts';
import type { PlaceLaw } from '../../proving/release/law-requirements.ts';
import type { RequirementId } from '../../proving/release/requirement.ts';
import type { ReleaseAnswer } from '../../proving/release/requirements.ts';
import type { ProofVerdict } from '../../proving/verdict/proof-answer.ts';
import type { Verdict } from '../../shared/verdict.ts';
import { ask } from '../animal/animal-api.ts';
import type { PaperChoice } from '../settings/paper-query.ts';

export type PlacementState = 'open' | 'released' | 'refused';

export interface PlacementLine {
  readonly id: string;
  readonly state: PlacementState;
  readonly at: string;
  readonly changedAt: string;
  readonly by: string;
  readonly title: string;
  readonly callName: string;
  readonly speciesId: string;
  readonly animalId: string;
  readonly enquiryId: string;
}

export interface PlacementEvent {
  readonly id: string;
  readonly kind: 'statement' | 'override' | 'released' | 'refused' | 'reopened' | 'taken-back' | 'aftercare';
  readonly body: Readonly<Record<string, unknown>>;
  readonly at: string;
  readonly by: string;
}

interface Kept<V> {
  readonly id: string;
  readonly verdict: V;
  readonly current: boolean;
  readonly at: string;
  readonly by: string;
}

export interface PlacementSheet {
  readonly id: string;
  readonly state: PlacementState;
  readonly at: string;
  readonly by: string;
  readonly today: string;
  readonly deskPlace: Place;
  readonly enquiry: {
    readonly id: string;
    readonly title: string;
    readonly createdAt: string;
    readonly updatedAt: string;
    readonly by: string;
    readonly document: unknown;
  };
  /** The own words of the buyer were taken out. */
  readonly erasure: { readonly at: string; readonly by: string; readonly reason: string } | null;
  readonly enclosure: Enclosure | null;
  readonly plan: Kept<Verdict> | null;
  readonly proof: Kept<ProofVerdict> | null;
  readonly animal: {
    readonly id: string;
    readonly callName: string;
    readonly speciesId: string;
    readonly stage: LifeStage | null;
    readonly massG: number | null;
    readonly totalLengthCm: number | null;
    readonly enclosure: string;
    readonly gone: boolean;
    readonly lookedOver: { readonly on: string; readonly by: string } | null;
  };
  readonly fitness: FitnessAnswer;
  readonly register: readonly HeadingFinding[];
  readonly law: readonly PlaceLaw[];
  readonly ageYears: number;
  readonly release: ReleaseAnswer;
  /** How the pack was written last. */
  readonly packPrint: (PaperChoice & { readonly at: string; readonly by: string }) | null;
  readonly events: readonly PlacementEvent[];
  /** An inspector only looks. */
  readonly mayAct: boolean;
  readonly mayOverride: boolean;
}

const at = (id: string): string => `/api/placements/${encodeURIComponent(id)}`;

/** Whether a manager may override a requirement in this branch, and who set it so. */
export interface PolicyLine {
  readonly id: RequirementId;
  readonly absolute: 'always' | 'absolute' | 'manager';
  readonly set: { readonly by: string; readonly at: string; readonly why: string } | null;
}

export const listPlacements = () =>
  ask<{ readonly placements: readonly PlacementLine[]; readonly policy: readonly PolicyLine[] }>('/api/placements');
export const readPlacement = (id: string) => ask<PlacementSheet>(at(id));
export const openPlacement = (enquiryId: string, animalId: string) =>
  ask<{ readonly id: string }>('/api/placements', 'POST', { enquiryId, animalId });
