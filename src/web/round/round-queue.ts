// Checks of the round that wait on this device until the shop computer has them. Each has a key of its own, so that
// sending twice writes once. Leaves out drawing the round (round-page.tsx).
import type { EventBodies } from '../../animal/event.ts';
import type { Fault } from '../../shared/fault.ts';
import { ask } from '../animal/animal-api.ts';

export interface WaitingCheck {
  readonly clientKey: string;
  readonly animalId: string;
  readonly on: string;
  readonly at: string;
  readonly body: EventBodies['round'];
}

export interface Refused {
  readonly check: WaitingCheck;
  readonly faults: readonly Fault[];
}

const storageKey = 'warmstead-round-queue-1';

export function waitingChecks(): readonly WaitingCheck[] {
  try {
    const raw: unknown = JSON.parse(localStorage.getItem(storageKey) ?? '[]');
    return Array.isArray(raw) ? (raw as readonly WaitingCheck[]) : [];
  } catch {
    return [];
  }
}

/** Throws when the device cannot keep it: then the check must not look as if it were done. */
function store(checks: readonly WaitingCheck[]): void {
  localStorage.setItem(storageKey, JSON.stringify(checks));
}

export const queueCheck = (checks: readonly WaitingCheck[]): void => store([...waitingChecks(), ...checks]);

interface Merged {
  readonly merged: readonly {
    readonly clientKey: string;
    readonly outcome: 'written' | 'known' | 'refused';
    readonly faults: readonly Fault[];
  }[];
}

/** Sends what waits, 100 at a time. What was taken or refused leaves the queue; what came in meanwhile stays.
 *  @returns null when the shop computer was not reached */
export async function sendWaiting(): Promise<readonly Refused[] | null> {
  const refused: Refused[] = [];
  for (;;) {
    const sending = waitingChecks().slice(0, 100);
    if (sending.length === 0) return refused;
    const answer = await ask<Merged>('/api/round', 'POST', { checks: sending });
    if (!answer.ok) return null;
    const byKey = new Map(answer.value.merged.map((one) => [one.clientKey, one]));
    for (const check of sending) {
      const one = byKey.get(check.clientKey);
      if (one?.outcome === 'refused') refused.push({ check, faults: one.faults });
    }
    store(waitingChecks().filter((check) => !byKey.has(check.clientKey)));
  }
}
