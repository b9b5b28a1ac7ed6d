// What every action at the desk is handed: who acts, the clock and the records. Nothing at the desk reads any of
// these from elsewhere, so accounts, branches and audit need no rewriting of actions.
import type { Db } from '../records/schema.ts';

/** What a person may do: the owner everything, the inspector only look. */
export type Role = 'assistant' | 'manager' | 'inspector' | 'owner';

export interface Actor {
  /** Written beside everything that the actor does. */
  readonly name: string;
  readonly branchId: string;
  readonly role: Role;
}

export interface Clock {
  readonly now: () => Date;
}

export interface DeskContext {
  readonly actor: Actor;
  readonly clock: Clock;
  readonly db: Db;
}

export const systemClock: Clock = { now: () => new Date() };
