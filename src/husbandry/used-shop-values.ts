// Which of a branch's own values go into one answer, and by which space standard it is judged. The same for desk,
// browser and terminal. Leaves out laying them over (overlay.ts).
import type { Fault } from '../shared/fault.ts';
import type { Facts } from './fact.ts';
import { withShopValues } from './overlay.ts';
import { concerns } from './overrulable.ts';
import { type ShopValue, standardPolicy } from './shop-value.ts';
import { usualHomeStandardId } from './usual-standard.ts';

/** Which of the branch's own values went into an answer, and which could not because the facts no longer allow them. */
export interface UsedShopValues {
  readonly shopValues: readonly ShopValue[];
  readonly refusedShopValues: readonly Fault[];
}

export interface AskedFor {
  readonly use: 'plan' | 'proof';
  readonly animal: { readonly speciesId: string; readonly stage: string } | null;
  /** The enclosure as JSON; null when any kit may come into it. */
  readonly enclosure: unknown;
  /** The standard that the person named; undefined leaves it to the shop. */
  readonly standardId?: string | undefined;
}

export interface ShopFacts {
  readonly facts: Facts;
  /** Named by the person, else the shop's policy, else the usual one. */
  readonly standardId: string;
  readonly used: UsedShopValues;
}

/** The facts with a branch's values over them, and what an answer must say of them. */
export function shopFactsFor(shipped: Facts, values: readonly ShopValue[], asked: AskedFor): ShopFacts {
  const { animal, enclosure, use } = asked;
  const mine =
    animal === null ? [] : values.filter(({ path }) => concerns(shipped, path, { ...animal, use, enclosure }));
  const { facts, faults } = withShopValues(shipped, mine);
  const laid = new Set(facts.overlaid.map(({ path }) => path));
  const policy = facts.policies.standardId?.value;
  const own = laid.has(standardPolicy) && typeof policy === 'string' ? policy : usualHomeStandardId;
  const followed = asked.standardId === undefined;
  return {
    facts,
    standardId: asked.standardId ?? own,
    used: {
      shopValues: mine.filter(({ path }) => laid.has(path) && (path !== standardPolicy || followed)),
      refusedShopValues: faults,
    },
  };
}
