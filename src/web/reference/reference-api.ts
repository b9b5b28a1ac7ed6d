// The HTTP doors onto the reference screens.
import type { Source, Species } from '../../husbandry/fact.ts';
import type { Standard } from '../../husbandry/standard.ts';
import type { Fault } from '../../shared/fault.ts';
import { ask } from '../animal/animal-api.ts';

export type Parts = Readonly<Record<string, number | string | null>>;

export interface ShopValue {
  readonly id: string;
  readonly path: string;
  readonly value: Parts;
  readonly was: Parts;
  readonly why: string;
  readonly at: string;
  readonly by: string;
  readonly withdrawn: { readonly at: string; readonly by: string; readonly why: string } | null;
}

export interface Reference {
  readonly today: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly species: readonly Species[];
  readonly standards: readonly Standard[];
  readonly sources: Readonly<Record<string, Source>>;
  readonly overlays: readonly ShopValue[];
  readonly refused: readonly Fault[];
}

export const readAllReference = () => ask<Reference>('/api/reference');
export const readReference = (id: string) => ask<Reference>(`/api/reference/${encodeURIComponent(id)}`);
export const setShopValue = (path: string, value: Parts, why: string) =>
  ask<{ readonly id: string }>('/api/overlays', 'POST', { path, value, why });
export const withdrawShopValue = (id: string, why: string) => ask(`/api/overlays/${id}/withdrawal`, 'POST', { why });

/** The shop value that holds at a path and can be used, or null. */
export const standingAt = (all: Reference, path: string): ShopValue | null =>
  all.overlays.findLast((one) => one.path === path && one.withdrawn === null) ?? null;
export const isRefused = (all: Reference, path: string): boolean => all.refused.some((fault) => fault.field === path);
