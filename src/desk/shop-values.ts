// A branch's own values, ready to be laid over the facts: which hold, which can no longer be used, which a plan used.
// Leaves out setting and withdrawing them (set-overlay.ts, withdraw-overlay.ts).
import type { Facts, Overlay } from '../husbandry/fact.ts';
import { factFaults, isRecord } from '../husbandry/fact-check.ts';
import { speciesFrom } from '../husbandry/facts-species.ts';
import { applyOverlay } from '../husbandry/overlay.ts';
import type { LifeStage } from '../physics/enclosure.ts';
import { type OverlayRow, type OverlayValue, standingOverlays } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import type { DeskContext } from './desk-context.ts';

/** Path of the space standard that a branch goes by when nobody names another. */
export const standardPolicy = 'policy.standardId';

/** A shop value as it is told with an answer that it went into. */
export interface ShopValue {
  readonly path: string;
  readonly value: OverlayValue;
  readonly was: OverlayValue;
  readonly by: string;
  /** ISO time. */
  readonly at: string;
  readonly why: string;
}

export const shopValueOf = ({ path, value, was, by, at, why }: OverlayRow): ShopValue => ({
  path,
  value,
  was,
  by,
  at: at.toISOString(),
  why,
});

export interface LaidOver {
  readonly facts: Facts;
  readonly faults: readonly Fault[];
}

type Parts = readonly (readonly [part: string, value: unknown])[];

/** All orders of up to three parts. */
const orders = (parts: Parts): readonly Parts[] =>
  parts.length < 2
    ? [parts]
    : parts.flatMap((first) => orders(parts.filter((part) => part !== first)).map((rest) => [first, ...rest]));

/** One shop value over the facts. Low and high go in whichever order never puts low above high on the way.
 *  Faults: those of the fact, and of facts of the same species that it would contradict. */
export function layOver(facts: Facts, one: Pick<ShopValue, 'path' | 'value' | 'by' | 'at' | 'why'>): LaidOver {
  const asOverlay = ([part, value]: readonly [string, unknown]): Overlay => ({
    path: `${one.path}.${part}`,
    value,
    who: one.by,
    when: one.at,
    why: one.why,
  });
  const composed = composedFaults(facts, one);
  if (composed.length > 0) return { facts, faults: composed };
  const tried = orders(Object.entries(one.value)).map((parts) => applyOverlay(facts, parts.map(asOverlay)));
  const laid = tried.find((attempt) => attempt.faults.length === 0) ?? tried[0] ?? { facts, faults: [] };
  if (laid.faults.length > 0) return { facts, faults: laid.faults };
  const contradictions = speciesFaults(laid.facts, one.path);
  return contradictions.length > 0 ? { facts, faults: contradictions } : laid;
}

/** Complaints about the fact as it would stand with all its new parts at once. */
function composedFaults(facts: Facts, { path, value }: Pick<ShopValue, 'path' | 'value'>): readonly Fault[] {
  const keys = path.split('.');
  const fact = keys.reduce<unknown>((at, key) => (isRecord(at) ? at[key] : undefined), facts);
  if (!isRecord(fact)) return [];
  const ctx = { file: path, sourceKeys: new Set(Object.keys(facts.sources)) };
  const found = factFaults(ctx, path, keys.at(-1) ?? '', { ...fact, ...value });
  return found.map((fault) => ({ ...fault, field: path }));
}

/** Does the whole species still hang together: cool below warm below basking, young below adult? */
function speciesFaults(facts: Facts, path: string): readonly Fault[] {
  const [table, id = ''] = path.split('.');
  const species = facts.species[id];
  if (table !== 'species' || species === undefined) return [];
  const ctx = { file: `species/${id}.json`, sourceKeys: new Set(Object.keys(facts.sources)) };
  return speciesFrom(ctx, species).faults.map((fault) => ({ ...fault, field: path }));
}

/** Shop values over the facts, one after the other; one that no longer fits the shipped facts is left out and named. */
export function withShopValues(facts: Facts, values: readonly ShopValue[]): LaidOver {
  let now = facts;
  const faults: Fault[] = [];
  for (const value of values) {
    if (value.path.startsWith('policy.')) continue;
    const laid = layOver(now, value);
    now = laid.facts;
    faults.push(...laid.faults);
  }
  return { facts: now, faults };
}

/** What of a branch's values goes into a plan for this animal: its species at its stage, care, and policies. */
export function concerns(path: string, animal: { readonly speciesId: string; readonly stage: LifeStage }): boolean {
  const [table, id, stage] = path.split('.');
  return table !== 'species' || (id === animal.speciesId && (stage === 'all' || stage === animal.stage));
}

export const shopValues = async (desk: DeskContext): Promise<readonly ShopValue[]> =>
  (await standingOverlays(desk.db, desk.actor.branchId)).map(shopValueOf);
