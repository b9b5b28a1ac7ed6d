// Who is at this sheet? Kept for the whole page; asked of the shop computer at the start, after coming and going, and
// whenever a request finds nobody signed in. Without a connection the last person known on this device goes on: what is
// done then waits on the device and is sent under a session of that person only.
import { useSyncExternalStore } from 'react';
import type { Place } from '../../husbandry/law-rule.ts';

export type PersonRole = 'assistant' | 'manager' | 'inspector' | 'owner';

export interface Me {
  readonly id: string;
  readonly name: string;
  readonly role: PersonRole;
  readonly branchId: string;
  readonly branchName: string;
  readonly shopName: string;
  readonly how: 'password' | 'passkey' | 'pin';
  readonly hasPin: boolean;
  readonly everyBranch: boolean;
}

export type SwitchChoice = Pick<Me, 'id' | 'name' | 'role'>;

export type Here =
  | { readonly state: 'waiting' }
  | { readonly state: 'unreached' }
  | { readonly state: 'out' }
  | { readonly state: 'set-up'; readonly places: readonly Place[] }
  | { readonly state: 'in'; readonly me: Me; readonly people: readonly SwitchChoice[] }
  | { readonly state: 'locked'; readonly me: Me; readonly people: readonly SwitchChoice[] };

export type Asking = 'session' | 'proof';

interface Door {
  readonly here: Here;
  /** The password is asked for once more. */
  readonly proving: boolean;
}

interface Waiter {
  readonly personId: string | null;
  readonly asking: Asking;
  readonly done: (again: boolean) => void;
}

const lastKey = 'warmstead-last-person-1';
let door: Door = { here: { state: 'waiting' }, proving: false };
let waiters: readonly Waiter[] = [];
const listeners = new Set<() => void>();

function put(next: Door): void {
  door = next;
  for (const listener of listeners) listener();
}

function lastPerson(): Me | null {
  try {
    return JSON.parse(localStorage.getItem(lastKey) ?? 'null') as Me | null;
  } catch {
    return null;
  }
}

/** Asks the shop computer who is here. */
export async function lookWhoIsHere(): Promise<void> {
  const here = await asked();
  if (here.state === 'in') localStorage.setItem(lastKey, JSON.stringify(here.me));
  put({ here, proving: door.proving });
}

async function asked(): Promise<Here> {
  try {
    const response = await fetch('/api/session');
    if (!response.ok) return { state: 'unreached' };
    return (await response.json()) as Here;
  } catch {
    const last = lastPerson();
    return last === null ? { state: 'unreached' } : { state: 'in', me: last, people: [] };
  }
}

/** After somebody came in, switched, or gave the password again: requests that waited go out or are given up. */
export async function cameIn(): Promise<void> {
  await lookWhoIsHere();
  const { here } = door;
  if (here.state !== 'in') return;
  const waited = waiters;
  waiters = [];
  put({ here, proving: false });
  for (const waiter of waited) waiter.done(waiter.personId === null || waiter.personId === here.me.id);
}

/** Whoever is asked for the password once more may leave it. */
export function notNow(): void {
  const left = waiters.filter((waiter) => waiter.asking === 'proof');
  waiters = waiters.filter((waiter) => waiter.asking !== 'proof');
  put({ ...door, proving: false });
  for (const waiter of left) waiter.done(false);
}

/** Waits until somebody has come in. @returns whether it is the person who was here before */
export async function askAtTheDoor(asking: Asking): Promise<boolean> {
  const before =
    door.here.state === 'in' || door.here.state === 'locked' ? door.here.me.id : (lastPerson()?.id ?? null);
  const answer = new Promise<boolean>((done) => {
    waiters = [...waiters, { personId: before, asking, done }];
  });
  if (asking === 'proof') put({ ...door, proving: true });
  else await lookWhoIsHere();
  // Somebody came in on another tab meanwhile.
  if (asking === 'session' && door.here.state === 'in') await cameIn();
  return await answer;
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useDoor = (): Door => useSyncExternalStore(subscribe, () => door);

/** The person at the sheet, or null while nobody is. */
export function useMe(): Me | null {
  const { here } = useDoor();
  return here.state === 'in' || here.state === 'locked' ? here.me : null;
}
