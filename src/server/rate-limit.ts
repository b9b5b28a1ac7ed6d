// How many requests a minute does one address get? A general limit, and a narrow one at the doors where secrets are
// guessed. Counted in this process: each of several processes counts for itself.
import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';

/** Far above what fifty people at one shop's address do, far below what harms (our choice). */
export const usualPerMinute = 3000;
/** Tries of a password, PIN or code from one address; each account has its own growing wait besides. */
export const guessesPerMinute = 20;

export async function addRateLimit(app: FastifyInstance, perMinute: number): Promise<void> {
  await app.register(rateLimit, {
    global: true,
    max: perMinute,
    timeWindow: 60_000,
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
export const atMost = (perMinute: number) => ({ max: perMinute, timeWindow: 60_000 });
