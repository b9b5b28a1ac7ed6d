// The HTTP doors of one's own account, and of the people who work here.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { accountFaults } from '../../desk/accounts/account-faults.ts';
import {
  addBranch,
  addPerson,
  changePerson,
  giveNewCode,
  showPeople,
  undoChange,
} from '../../desk/accounts/manage-people.ts';
import { changePassword, changePin, endOwnSession, goToBranch, ownAccount } from '../../desk/accounts/own-account.ts';
import { dropPasskey, keepPasskey, newPasskeyOptions } from '../../desk/accounts/passkeys.ts';
import { places } from '../../husbandry/law-rule.ts';
import type { Result } from '../../shared/result.ts';
import {
  accountParams,
  branchBody,
  branchChoiceBody,
  passkeyBody,
  passkeyParams,
  passwordBody,
  personBody,
  pinBody,
  standingBody,
} from '../account-schemas.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { atMost, guessesPerMinute } from '../rate-limit.ts';
import type { App, Doors } from '../types.ts';
import { siteOf } from './session.ts';

const tags = ['accounts'];
const response = { 200: anyAnswer };
const self = { who: 'self' } as const;
/** Asks for the password again. */
const asking = { who: 'self', rateLimit: atMost(guessesPerMinute) } as const;

async function told<T>(reply: FastifyReply, result: Result<T>): Promise<FastifyReply> {
  return result.ok ? reply.send(result.value) : await sendFaults(reply, result.faults);
}

/** What changes who can get in is not done on the strength of a PIN. */
async function proven(request: FastifyRequest, reply: FastifyReply): Promise<void> {
  if (request.found.state === 'open' && request.found.session.how === 'pin') {
    await sendFaults(reply, [accountFaults.prove]);
  }
}

export function accountRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/account',
    { config: self, schema: { tags, summary: 'Own sessions, passkeys and branches', response } },
    async (request) => await ownAccount(doors.own(request)),
  );
  app.put(
    '/api/account/password',
    { config: asking, schema: { tags, summary: 'Change the password', body: passwordBody, response } },
    async (request, reply) => await told(reply, await changePassword(doors.own(request), request.body)),
  );
  app.put(
    '/api/account/pin',
    { config: asking, schema: { tags, summary: 'Set or take away the PIN', body: pinBody, response } },
    async (request, reply) => await told(reply, await changePin(doors.own(request), request.body)),
  );
  app.put(
    '/api/account/branch',
    { config: self, schema: { tags, summary: 'Work at another branch', body: branchChoiceBody, response } },
    async (request, reply) => await told(reply, await goToBranch(doors.own(request), request.body.branchId)),
  );
  app.post(
    '/api/account/sessions/:id/end',
    { config: self, schema: { tags, summary: 'End one of the own sessions', params: accountParams, response } },
    async (request, reply) => await told(reply, await endOwnSession(doors.own(request), request.params.id)),
  );
  app.post(
    '/api/account/passkey-question',
    { config: self, preHandler: proven, schema: { tags, summary: 'Begin a new passkey', response } },
    async (request) => await newPasskeyOptions(doors.own(request), siteOf(request)),
  );
  app.post(
    '/api/account/passkeys',
    { config: self, preHandler: proven, schema: { tags, summary: 'Keep a new passkey', body: passkeyBody, response } },
    async (request, reply) => {
      const given = request.body as unknown as Parameters<typeof keepPasskey>[2];
      return await told(reply, await keepPasskey(doors.own(request), siteOf(request), given));
    },
  );
  app.post(
    '/api/account/passkeys/:id/removal',
    {
      config: self,
      preHandler: proven,
      schema: { tags, summary: 'Remove a passkey', params: passkeyParams, response },
    },
    async (request, reply) => await told(reply, await dropPasskey(doors.own(request), request.params.id)),
  );
}

export function peopleRoutes(app: App, doors: Doors): void {
  const manager = { who: 'manager' } as const;
  app.get(
    '/api/people',
    { config: manager, schema: { tags, summary: 'People, branches, and what was changed', response } },
    async (request) => ({ ...(await showPeople(doors.own(request))), places }),
  );
  app.post(
    '/api/people',
    {
      config: manager,
      preHandler: proven,
      schema: {
        tags,
        summary: 'Add a person; the answer holds a one-time code',
        body: personBody,
        response: { 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const added = await addPerson(doors.own(request), request.body);
      return added.ok ? reply.code(201).send(added.value) : await sendFaults(reply, added.faults);
    },
  );
  app.put(
    '/api/people/:id',
    {
      config: manager,
      preHandler: proven,
      schema: { tags, summary: 'Change role, branch, or disable', params: accountParams, body: standingBody, response },
    },
    async (request, reply) =>
      await told(reply, await changePerson(doors.own(request), request.params.id, request.body)),
  );
  app.post(
    '/api/people/:id/code',
    {
      config: manager,
      preHandler: proven,
      schema: { tags, summary: 'A one-time code for a new password', params: accountParams, response },
    },
    async (request, reply) => await told(reply, await giveNewCode(doors.own(request), request.params.id)),
  );
  app.post(
    '/api/people/changes/:id/undo',
    {
      config: manager,
      preHandler: proven,
      schema: { tags, summary: 'Take a change back', params: accountParams, response },
    },
    async (request, reply) => await told(reply, await undoChange(doors.own(request), request.params.id)),
  );
  app.post(
    '/api/branches',
    {
      config: { who: 'owner' },
      preHandler: proven,
      schema: { tags, summary: 'Add a branch', body: branchBody, response: { 201: anyAnswer } },
    },
    async (request, reply) => {
      const added = await addBranch(doors.own(request), request.body);
      return added.ok ? reply.code(201).send(added.value) : await sendFaults(reply, added.faults);
    },
  );
}
