// What the HTTP doors are handed.

import type { IncomingMessage, ServerResponse } from 'node:http';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyBaseLogger, FastifyInstance, FastifyRequest, RawServerDefault } from 'fastify';
import type { DeskContext } from '../desk/desk-context.ts';
import type { Planner } from '../desk/planner.ts';
import type { Records } from '../records/open.ts';
import type { Branch } from '../records/shops.ts';

export type App = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  TypeBoxTypeProvider
>;

export interface Doors {
  readonly records: Records;
  readonly branch: Branch;
  readonly planner: Planner;
  /** Who acts, the clock and the records, anew for each request. */
  readonly desk: (request: Pick<FastifyRequest, 'headers'>) => DeskContext;
}
