// A branch's own values as they stand in the records, ready to be laid over the facts (husbandry/overlay.ts).
// Leaves out setting and withdrawing them (set-overlay.ts, withdraw-overlay.ts).
import type { Facts } from '../husbandry/fact.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import type { ShopValue } from '../husbandry/shop-value.ts';
import { allFacts } from '../records/animal-facts.ts';
import { type OverlayRow, standingOverlays } from '../records/overlays.ts';
import type { DeskContext } from './desk-context.ts';

export type { ShopValue } from '../husbandry/shop-value.ts';

export const shopValueOf = ({ path, value, was, by, at, why }: OverlayRow): ShopValue => ({
  path,
  value,
  was,
  by,
  at: at.toISOString(),
  why,
});

export const shopValues = async (desk: Pick<DeskContext, 'db' | 'actor'>): Promise<readonly ShopValue[]> =>
  (await standingOverlays(desk.db, desk.actor.branchId)).map(shopValueOf);

/** The facts as this branch goes by them. */
export const factsOfBranch = async (desk: Pick<DeskContext, 'db' | 'actor'>): Promise<Facts> =>
  withShopValues(allFacts().facts, await shopValues(desk)).facts;
