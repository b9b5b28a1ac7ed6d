// The shop overrules one shipped value or states a policy; who, when and why are kept with it and shown beside it.
import { shopValueFaults, withShopValues } from '../husbandry/overlay.ts';
import { overlayFaults } from '../husbandry/overlay-faults.ts';
import { placeOf } from '../husbandry/overrulable.ts';
import type { ShopParts } from '../husbandry/shop-value.ts';
import { allFacts } from '../records/animal-facts.ts';
import { insertOverlay } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { releasePolicyAt, releasePolicyFaults, shippedPolicy } from './release-policy.ts';
import { shopValues } from './shop-values.ts';

export interface NewShopValue {
  readonly path: string;
  readonly value: ShopParts;
  readonly why: string;
}

const forShop = (fault: Fault): Fault =>
  fault.code.startsWith('DATA_')
    ? { ...fault, fix: 'Give a value within what is allowed, then keep it again.' }
    : fault;

/** Faults, all at once: "OVERLAY_FACT", "OVERLAY_PARTS", "OVERLAY_WORD", "OVERLAY_NUMBER", "OVERLAY_LOOSER",
 *  "OVERLAY_WHY", those of the fact ("DATA_..."). */
export async function setOverlay(desk: DeskContext, change: NewShopValue): Promise<Result<{ readonly id: string }>> {
  const { facts } = allFacts();
  const { actor, clock, db } = desk;
  const now = clock.now();
  const why = change.why.trim();
  const writer = { branchId: actor.branchId, at: now, by: actor.name };
  const noReason = why === '' ? [overlayFaults.why()] : [];
  const requirement = releasePolicyAt(change.path);
  if (requirement !== null) {
    const faults = [...releasePolicyFaults(requirement, change.value), ...noReason];
    if (faults.length > 0) return bad(faults);
    const was = { value: shippedPolicy(requirement) };
    return good({ id: await insertOverlay(db, { ...change, why, was }, writer) });
  }
  const others = (await shopValues(desk)).filter((value) => value.path !== change.path);
  const before = withShopValues(facts, others).facts;
  const found = shopValueFaults(before, { ...change, why, by: actor.name, at: now.toISOString() });
  // The reason is judged on its own, so that a missing one hides nothing that is wrong with the number.
  const faults = [...found.map(forShop), ...noReason];
  const shipped = placeOf(facts, change.path);
  if (faults.length > 0 || shipped === null) return bad(faults);
  const was: ShopParts = Object.fromEntries(shipped.parts.map((part) => [part, (shipped.fact[part] ?? null) as never]));
  return good({ id: await insertOverlay(db, { ...change, why, was }, writer) });
}
