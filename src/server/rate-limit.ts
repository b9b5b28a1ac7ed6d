// How many requests a minute does one address get? Narrow limits at the doors where secrets are guessed and behind
// keepers' links are counted in the database, for all processes together; the wide ones against floods in each process.
import rateLimit, { type FastifyRateLimitStore } from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';
import { countRequest } from '../records/request-counts.ts';
import type { Db } from '../records/schema.ts';

/** Far above what fifty people at one shop's address do, far below what harms (our choice). */
export const usualPerMinute = 3000;
/** Tries of a password, PIN or code from one address; each account has its own growing wait besides. */
export const guessesPerMinute = 20;

/** Up to this many a minute are counted for all processes together: one row in the database for each request. */
const togetherUpTo = 120;
const windowMs = 60_000;

export async function addRateLimit(app: FastifyInstance, db: Db, perMinute: number): Promise<void> {
  await app.register(rateLimit, {
    global: true,
    max: perMinute,
    timeWindow: windowMs,
    store: storesOn(db),
    addHeaders: { 'x-ratelimit-limit': false, 'x-ratelimit-remaining': false, 'x-ratelimit-reset': false },
    errorResponseBuilder: (_request, context) => new TooMany(context.max),
  });
}

/** Thrown by the limit and turned into a fault like every other error (errors.ts). */
export class TooMany extends Error {
  readonly statusCode = 429;
  readonly perMinute: number;
  constructor(perMinute: number) {
    super('too many requests');
    this.perMinute = perMinute;
  }
}

/** The limit of one door, for its config. */
export const atMost = (perMinute: number) => ({ max: perMinute, timeWindow: windowMs });

type Counts = Pick<FastifyRateLimitStore, 'incr'>;
interface OfDoor {
  readonly max?: unknown;
  readonly routeInfo?: { readonly method?: unknown; readonly url?: string };
}

/** What the limiter asks for: a class whose child counts for one door. */
function storesOn(db: Db) {
  return class Store implements FastifyRateLimitStore {
    readonly #counts: Counts;
    constructor(of: OfDoor) {
      const narrow = of.routeInfo !== undefined && typeof of.max === 'number' && of.max <= togetherUpTo;
      this.#counts = narrow ? countedTogether(db, `${of.routeInfo?.method} ${of.routeInfo?.url}`) : countedHere();
    }
    incr(...asked: Parameters<Counts['incr']>): void {
      this.#counts.incr(...asked);
    }
    child(door: object): Store {
      return new Store(door as OfDoor);
    }
  };
}

function countedTogether(db: Db, door: string): Counts {
  return {
    incr: (address, done) => {
      countRequest(db, door, address, windowMs).then(
        ({ count, leftMs }) => done(null, { current: count, ttl: leftMs }),
        (error: Error) => done(error),
      );
    },
  };
}

/** Addresses beyond this many make the oldest forgotten, so that a flood from many addresses takes no memory. */
const mostAddresses = 5000;

function countedHere(): Counts {
  const seen = new Map<string, { count: number; untilMs: number }>();
  return {
    incr: (address, done) => {
      const nowMs = performance.now();
      const before = seen.get(address);
      const now = before === undefined || before.untilMs <= nowMs ? { count: 0, untilMs: nowMs + windowMs } : before;
      now.count++;
      seen.delete(address);
      seen.set(address, now);
      const [oldest] = seen.keys();
      if (seen.size > mostAddresses && oldest !== undefined) seen.delete(oldest);
      done(null, { current: now.count, ttl: now.untilMs - nowMs });
    },
  };
}
