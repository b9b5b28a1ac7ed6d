// Lets a request through to its door, or says why not: who is signed in, is the sheet locked, does the role allow it.
// Looks before the body is read; a door that names nobody was refused at start (who.ts).
import cookie from '@fastify/cookie';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { accountFaults } from '../desk/accounts/account-faults.ts';
import { type AccountDesk, type FoundSession, findSession, type OwnDesk } from '../desk/accounts/sessions.ts';
import type { Fault } from '../shared/fault.ts';
import { sendFaults } from './errors.ts';
import { sessionToken } from './session-cookie.ts';
import { needsAccount, roleMay, type Who } from './who.ts';

declare module 'fastify' {
  interface FastifyRequest {
    found: FoundSession;
  }
}

export async function addGuard(app: FastifyInstance, desk: AccountDesk): Promise<void> {
  await app.register(cookie);
  app.decorateRequest('found');
  app.addHook('preParsing', async (request, reply) => {
    const who = request.routeOptions.config.who;
    if (who === undefined) return; // pages, and what is not there
    // What an answer holds is for this person: no cache on the way keeps it, unless the door says otherwise.
    void reply.header('cache-control', 'no-store');
    request.found = await findSession(desk, sessionToken(request));
    const fault = refusal(who, request.found);
    if (fault !== null) await sendFaults(reply, [fault]);
  });
}

function refusal(who: Who, found: FoundSession): Fault | null {
  if (!needsAccount(who)) return null;
  if (found.state === 'none') return accountFaults.needed;
  if (found.state === 'locked') return accountFaults.locked;
  return roleMay(found.session.role, who) ? null : accountFaults.role(found.session.role, `the door is for: ${who}`);
}

/** The desk of the person who is signed in. Doors that need nobody have none: asking there is our mistake. */
export function ownDesk(desk: AccountDesk, request: FastifyRequest): OwnDesk {
  const who = request.routeOptions.config.who;
  if (who === undefined || !needsAccount(who) || request.found.state !== 'open') {
    throw new Error('a door without an account has no desk');
  }
  return { ...desk, session: request.found.session };
}
