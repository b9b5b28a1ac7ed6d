// The HTTP doors of coming and going: who is here, set-up, sign-in, codes, passkeys, lock, switch, sign-out.
import type { FastifyReply, FastifyRequest } from 'fastify';
import { accountFaults } from '../../desk/accounts/account-faults.ts';
import { signOut, signOutEverywhere } from '../../desk/accounts/own-account.ts';
import { passkeyQuestion, type Site, signInByPasskey } from '../../desk/accounts/passkeys.ts';
import { setUpShop } from '../../desk/accounts/set-up.ts';
import { choosePassword, proveAgain, signIn, type WayIn } from '../../desk/accounts/sign-in.ts';
import { lockSheet, switchChoices, switchPerson } from '../../desk/accounts/switch-person.ts';
import { places } from '../../husbandry/law-rule.ts';
import { branchFacts } from '../../records/animals.ts';
import { hasOwner } from '../../records/people.ts';
import type { Result } from '../../shared/result.ts';
import { answerBody, codeBody, proveBody, setUpBody, signInBody, switchBody } from '../account-schemas.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { atMost, guessesPerMinute } from '../rate-limit.ts';
import { deviceKind, dropSessionCookie, putSessionCookie } from '../session-cookie.ts';
import type { App, Doors } from '../types.ts';

const tags = ['session'];
const response = { 200: anyAnswer };
/** Open to strangers, but not for guessing. */
const door = { who: 'anyone', rateLimit: atMost(guessesPerMinute) } as const;

export const siteOf = (request: FastifyRequest): Site => ({
  origin: `${request.protocol}://${request.host}`,
  host: request.hostname,
});

const wayOf = (request: FastifyRequest): WayIn => ({
  device: deviceKind(request.headers['user-agent']),
  instead: request.found.state === 'none' ? null : request.found.session,
});

export function sessionRoutes(app: App, doors: Doors): void {
  const { gate } = doors;
  app.get(
    '/api/session',
    { config: { who: 'anyone' }, schema: { tags, summary: 'Who is signed in here', response } },
    async (request) => await whoIsHere(doors, request),
  );
  app.post(
    '/api/set-up',
    {
      config: door,
      schema: { tags, summary: 'The first owner, by the code in the terminal', body: setUpBody, response },
    },
    async (request, reply) => {
      const { branchId } = doors.branch;
      const { shopId } = await branchFacts(gate.db, branchId);
      const device = deviceKind(request.headers['user-agent']);
      return await entered(request, reply, await setUpShop(gate, { branchId, shopId }, request.body, device));
    },
  );
  app.post(
    '/api/session',
    { config: door, schema: { tags, summary: 'Sign in', body: signInBody, response } },
    async (request, reply) => await entered(request, reply, await signIn(gate, request.body, wayOf(request))),
  );
  app.post(
    '/api/session/code',
    { config: door, schema: { tags, summary: 'Choose a password with a one-time code', body: codeBody, response } },
    async (request, reply) => await entered(request, reply, await choosePassword(gate, request.body, wayOf(request))),
  );
  app.post(
    '/api/session/passkey-question',
    { config: door, schema: { tags, summary: 'What a passkey has to answer', response } },
    async (request) => await passkeyQuestion(gate, siteOf(request)),
  );
  app.post(
    '/api/session/passkey',
    { config: door, schema: { tags, summary: 'Sign in by passkey', body: answerBody, response } },
    async (request, reply) => {
      const given = request.body as unknown as Parameters<typeof signInByPasskey>[2];
      return await entered(request, reply, await signInByPasskey(gate, siteOf(request), given, wayOf(request)));
    },
  );
  openSessionRoutes(app, doors);
}

function openSessionRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/session/switch',
    { config: door, schema: { tags, summary: 'The next person, by PIN', body: switchBody, response } },
    async (request, reply) => {
      if (request.found.state === 'none') return await sendFaults(reply, [accountFaults.needed]);
      return await entered(request, reply, await switchPerson(doors.gate, request.found.session, request.body));
    },
  );
  app.post(
    '/api/session/prove',
    {
      config: { who: 'self', rateLimit: atMost(guessesPerMinute) },
      schema: { tags, summary: 'The password once more', body: proveBody, response },
    },
    async (request, reply) => {
      const { session } = doors.own(request);
      return await entered(request, reply, await proveAgain(doors.gate, session, request.body.password));
    },
  );
  app.post(
    '/api/session/lock',
    { config: { who: 'self' }, schema: { tags, summary: 'Lock the sheet', response } },
    async (request) => {
      await lockSheet(doors.own(request));
      return {};
    },
  );
  // Also from a locked sheet: whoever stands there may close it.
  app.post(
    '/api/session/end',
    { config: { who: 'anyone' }, schema: { tags, summary: 'Sign out', response } },
    async (request, reply) => {
      if (request.found.state !== 'none') await signOut({ ...doors.gate, session: request.found.session });
      dropSessionCookie(request, reply);
      return {};
    },
  );
  app.post(
    '/api/session/end-everywhere',
    { config: { who: 'self' }, schema: { tags, summary: 'Sign out on every device', response } },
    async (request, reply) => {
      await signOutEverywhere(doors.own(request));
      dropSessionCookie(request, reply);
      return {};
    },
  );
}

async function entered(
  request: FastifyRequest,
  reply: FastifyReply,
  opened: Result<{ readonly token: string }>,
): Promise<FastifyReply> {
  if (!opened.ok) return await sendFaults(reply, opened.faults);
  putSessionCookie(request, reply, opened.value.token);
  return reply.send({});
}

async function whoIsHere(doors: Doors, request: FastifyRequest) {
  const { found } = request;
  if (found.state === 'none') {
    const setUp = !(await hasOwner(doors.gate.db));
    return { state: setUp ? 'set-up' : 'out', ...(setUp ? { places } : {}) };
  }
  const { session } = found;
  const people = await switchChoices(doors.gate, session);
  const { personId: id, name, role, branchId, branchName, shopName, how, hasPin } = session;
  const me = { id, name, role, branchId, branchName, shopName, how, hasPin, everyBranch: session.ownBranchId === null };
  return { state: found.state === 'open' ? 'in' : 'locked', me, people };
}
