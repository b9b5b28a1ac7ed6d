// The shop overrules one shipped value or states a policy; who, when and why are kept with it and shown beside it.
import type { Fact, Facts } from '../husbandry/fact.ts';
import { isRecord } from '../husbandry/fact-check.ts';
import { defaultRule } from '../proving/verdict/rule.ts';
import { allFacts } from '../records/animal-facts.ts';
import { insertOverlay, type OverlayValue } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { overlayFaults } from './overlay-faults.ts';
import { proofPolicies, proofPolicyFaults } from './proof-policy.ts';
import { releasePolicyAt, releasePolicyFaults, shippedPolicy } from './release-policy.ts';
import { layOver, shopValues, standardPolicy, withShopValues } from './shop-values.ts';

export interface NewShopValue {
  readonly path: string;
  readonly value: OverlayValue;
  readonly why: string;
}

/** Law is not the shop's to overrule, and lists are not numbers. */
const never: readonly string[] = ['euAnnex', 'citesAppendix'];

/** The shipped fact at a path that a shop may overrule, or null. */
export function shippedAt(facts: Facts, path: string): Fact | null {
  const keys = path.split('.');
  const [table, ...rest] = keys;
  const long = table === 'species' ? 3 : table === 'care' ? 1 : -1;
  if (rest.length !== long || never.includes(keys.at(-1) ?? '')) return null;
  let at: unknown = facts;
  for (const key of keys) at = isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined;
  return isRecord(at) && 'source' in at && partsOf(at as unknown as Fact).length > 0 ? (at as unknown as Fact) : null;
}

/** Parts of a fact that can be overruled: low and high, or value. */
export const partsOf = (fact: Fact): readonly ('low' | 'high' | 'value')[] => {
  const parts = (['low', 'high', 'value'] as const).filter((part) => part in fact);
  return parts.filter((part) => typeof fact[part] !== 'object' || fact[part] === null);
};

/** Words that any species has for this quantity. */
function wordsFor(facts: Facts, key: string): readonly string[] {
  const words = Object.values(facts.species).flatMap(({ all, hatchling, young, adult }) =>
    [all, hatchling, young, adult].map((table) => table[key]?.value),
  );
  return [...new Set(words.filter((word) => typeof word === 'string'))].sort();
}

function wordFaults(facts: Facts, fact: Fact, change: NewShopValue): readonly Fault[] {
  if (typeof fact.value !== 'string') return [];
  const known = wordsFor(facts, change.path.split('.').at(-1) ?? '');
  const got = change.value.value;
  return got === undefined || known.includes(String(got)) ? [] : [overlayFaults.word(change.path, String(got), known)];
}

function partFaults(fact: Fact, change: NewShopValue): readonly Fault[] {
  const [got, wanted] = [Object.keys(change.value).sort(), [...partsOf(fact)].sort()];
  return got.join() === wanted.join() ? [] : [overlayFaults.parts(change.path, got, wanted)];
}

const forShop = (fault: Fault): Fault => ({
  ...fault,
  fix: 'Give a value within what is allowed, then keep it again.',
});

function policyFaults(facts: Facts, change: NewShopValue): readonly Fault[] {
  const got = String(change.value.value ?? '');
  return Object.hasOwn(facts.standards, got)
    ? partFaults({ value: got, source: '', at: '', read: 'memory' }, change)
    : [overlayFaults.word(change.path, got, Object.keys(facts.standards))];
}

/** Faults, all at once: "OVERLAY_FACT", "OVERLAY_PARTS", "OVERLAY_WORD", "OVERLAY_NUMBER", "OVERLAY_WHY", those of the fact ("DATA_..."). */
export async function setOverlay(desk: DeskContext, change: NewShopValue): Promise<Result<{ readonly id: string }>> {
  const { facts } = allFacts();
  const { actor, clock, db } = desk;
  const now = clock.now();
  const why = change.why.trim();
  const noReason = why === '' ? [overlayFaults.why()] : [];
  const writer = { branchId: actor.branchId, at: now, by: actor.name };
  if (change.path === standardPolicy) {
    const faults = [...policyFaults(facts, change), ...noReason];
    if (faults.length > 0) return bad(faults);
    return good({ id: await insertOverlay(db, { ...change, why, was: { value: null } }, writer) });
  }
  const proofPolicy = proofPolicies[change.path];
  if (proofPolicy !== undefined) {
    const faults = [...proofPolicyFaults(change.path, change.value), ...noReason];
    if (faults.length > 0) return bad(faults);
    const was = { value: Number(defaultRule[proofPolicy.key]) };
    return good({ id: await insertOverlay(db, { ...change, why, was }, writer) });
  }
  const requirement = releasePolicyAt(change.path);
  if (requirement !== null) {
    const faults = [...releasePolicyFaults(requirement, change.value), ...noReason];
    if (faults.length > 0) return bad(faults);
    return good({
      id: await insertOverlay(db, { ...change, why, was: { value: shippedPolicy(requirement) } }, writer),
    });
  }
  const shipped = shippedAt(facts, change.path);
  if (shipped === null) return bad([overlayFaults.fact(change.path), ...noReason]);
  const others = (await shopValues(desk)).filter((value) => value.path !== change.path);
  const shape = [...partFaults(shipped, change), ...wordFaults(facts, shipped, change)];
  // The reason is judged on its own, so that a missing one hides nothing that is wrong with the number.
  const value = { ...change, by: actor.name, at: now.toISOString(), why: why || 'not given yet' };
  const laid = shape.length > 0 ? [] : layOver(withShopValues(facts, others).facts, value).faults;
  const faults = [...shape, ...laid.map(forShop), ...noReason];
  if (faults.length > 0) return bad(faults);
  const was = Object.fromEntries(partsOf(shipped).map((part) => [part, shipped[part] as number | string | null]));
  return good({ id: await insertOverlay(db, { ...change, why, was }, writer) });
}
