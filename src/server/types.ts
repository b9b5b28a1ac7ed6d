// What the HTTP doors are handed.

import type { IncomingMessage, ServerResponse } from 'node:http';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyBaseLogger, FastifyInstance, FastifyRequest, RawServerDefault } from 'fastify';
import type { AccountDesk, OwnDesk } from '../desk/accounts/sessions.ts';
import type { Clock, DeskContext } from '../desk/desk-context.ts';
import type { Planner } from '../desk/planner.ts';
import type { Records } from '../records/open.ts';
import type { Queue } from '../records/queue.ts';
import type { Branch } from '../records/shops.ts';

export type App = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  TypeBoxTypeProvider
>;

/** What the server is built on. */
export interface Ground extends AccountDesk {
  readonly records: Records;
  /** The first branch: where a new shop is set up. */
  readonly branch: Branch;
  readonly planner: Planner;
  /** Work that may wait; without one there are no doors onto it. */
  readonly queue?: Queue | undefined;
  /** The clock that limits sessions, where it is another than the desk's. */
  readonly sessionClock?: Clock;
}

export interface Doors {
  readonly records: Records;
  readonly branch: Branch;
  readonly planner: Planner;
  /** Who acts, the clock and the records, anew for each request; only behind doors that need an account. */
  readonly desk: (request: FastifyRequest) => DeskContext;
  /** The same with the session: for what a person does with accounts. */
  readonly own: (request: FastifyRequest) => OwnDesk;
  /** Clock and records for doors that need no account: nobody acts, no branch is taken for granted. */
  readonly stranger: AccountDesk;
  /** The same for the doors of coming and going, by the clock of sessions. */
  readonly gate: AccountDesk;
  /** Work that may wait; without one there are no doors onto it. */
  readonly queue?: Queue | undefined;
}
