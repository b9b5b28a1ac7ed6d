// What the plan sheet says is missing next; told by the sheet that knows it, read by the line on top.
import { useEffect, useSyncExternalStore } from 'react';

let said: string | null = null;
const listeners = new Set<() => void>();

export function sayPlanMissing(next: string | null): void {
  if (next === said) return;
  said = next;
  for (const listener of listeners) listener();
}

/** Says it while the component stands, takes it back when it goes. */
export function useSayPlanMissing(next: string | null): void {
  useEffect(() => {
    sayPlanMissing(next);
    return () => sayPlanMissing(null);
  }, [next]);
}

export function usePlanMissing(): string | null {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => said,
  );
}
