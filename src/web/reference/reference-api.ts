// The HTTP doors onto the reference screens.
import type { Fact, Source, Species } from '../../husbandry/fact.ts';
import type { ShopParts as Parts } from '../../husbandry/shop-value.ts';
import type { Standard } from '../../husbandry/standard.ts';
import type { Fault } from '../../shared/fault.ts';
import { ask } from '../animal/animal-api.ts';
import { askShopValues } from '../state/shop-values.ts';

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

/** What a row needs to know of the branch's own values. */
export interface OwnValues {
  readonly sources: Readonly<Record<string, Source>>;
  readonly overlays: readonly ShopValue[];
  readonly refused: readonly Fault[];
}

export interface Reference extends OwnValues {
  readonly today: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly species: readonly Species[];
  readonly standards: readonly Standard[];
}

export const readAllReference = () => ask<Reference>('/api/reference');
export const readReference = (id: string) => ask<Reference>(`/api/reference/${encodeURIComponent(id)}`);
export async function setShopValue(path: string, value: Parts, why: string) {
  const answer = await ask<{ readonly id: string }>('/api/overlays', 'POST', { path, value, why });
  await askShopValues();
  return answer;
}
export async function withdrawShopValue(id: string, why: string) {
  const answer = await ask(`/api/overlays/${id}/withdrawal`, 'POST', { why });
  await askShopValues();
  return answer;
}

export const listTables = ['law', 'policy', 'heaters', 'thermostats', 'substrates', 'materials'] as const;

/** A row of a list with what a shop may overrule in it. */
export interface ListedRow {
  readonly id: string;
  readonly name: string;
  readonly say: string;
  readonly places: readonly string[];
  readonly dateChecked: string | null;
  readonly reviewBy: string | null;
  readonly stale: boolean;
  readonly secondHand: boolean;
  readonly decides: string;
  readonly facts: readonly { readonly path: string; readonly fact: Fact; readonly words: readonly string[] | null }[];
}

export interface Lists extends OwnValues {
  readonly today: string;
  readonly lists: Readonly<Record<(typeof listTables)[number], readonly ListedRow[]>>;
  /** What of the shipped facts is not sound and not used. */
  readonly leftOut: readonly Fault[];
}

export const readLists = () => ask<Lists>('/api/lists');

/** The shop value that holds at a path and can be used, or null. */
export const standingAt = (all: OwnValues, path: string): ShopValue | null =>
  all.overlays.findLast((one) => one.path === path && one.withdrawn === null) ?? null;
export const isRefused = (all: OwnValues, path: string): boolean => all.refused.some((fault) => fault.field === path);
