// Keeps a flood from one address away from doors that need no account.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendFaults } from './errors.ts';
import { requestFaults } from './faults.ts';

/** Lets so many requests a minute through from one address. */
export function floodGate(perMinute: number) {
  let minute = 0;
  let seen = new Map<string, number>();
  return async (request: FastifyRequest, reply: FastifyReply): Promise<void> => {
    const now = Math.floor(performance.now() / 60_000);
    if (now !== minute) {
      minute = now;
      seen = new Map();
    }
    const count = (seen.get(request.ip) ?? 0) + 1;
    seen.set(request.ip, count);
    if (count > perMinute) await sendFaults(reply, [requestFaults.tooMany(perMinute)]);
  };
}
