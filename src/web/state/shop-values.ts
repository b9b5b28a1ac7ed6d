// The branch's own values, asked of the shop computer once for the whole page and again when one was changed here.
// While they are not known nothing is judged; when they cannot be reached the shipped values stand in and it is said.
import { useEffect, useSyncExternalStore } from 'react';
import type { ShopValue } from '../../husbandry/shop-value.ts';
import type { Fault } from '../../shared/fault.ts';
import { ask } from '../animal/animal-api.ts';

export interface KnownShopValues {
  readonly values: readonly ShopValue[];
  readonly refused: readonly Fault[];
  /** False when the shop computer did not answer. */
  readonly reached: boolean;
}

const unreached: KnownShopValues = { values: [], refused: [], reached: false };
let known: KnownShopValues | null = null;
let asking = false;
const listeners = new Set<() => void>();

/** Asks anew; what is the same stays the same object, so that nothing is worked out twice. */
export async function askShopValues(): Promise<void> {
  if (asking) return;
  asking = true;
  const answer = await ask<Omit<KnownShopValues, 'reached'>>('/api/shop-values');
  asking = false;
  const next = answer.ok ? { ...answer.value, reached: true } : (known ?? unreached);
  if (JSON.stringify(next) === JSON.stringify(known)) return;
  known = next;
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Null until the shop computer has answered or failed to. */
export function useShopValues(): KnownShopValues | null {
  useEffect(() => {
    void askShopValues();
  }, []);
  return useSyncExternalStore(subscribe, () => known);
}
