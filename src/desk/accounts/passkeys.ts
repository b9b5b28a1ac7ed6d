// Passkeys: made by a person who is signed in, used instead of name and password. The device keeps the secret half.
import {
  type AuthenticationResponseJSON,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import {
  insertChallenge,
  insertPasskey,
  markPasskeyUsed,
  passkeyById,
  passkeysOf,
  removePasskey,
  takeChallenge,
} from '../../records/passkeys.ts';
import { addPersonChange, personById } from '../../records/people.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { accountFaults } from './account-faults.ts';
import { type AccountDesk, type OwnDesk, openSession } from './sessions.ts';
import type { WayIn } from './sign-in.ts';
import { forgetWrong } from './waits.ts';

/** A question stays open for five minutes (our choice). */
const openMs = 300_000;

/** Where the browser is: a passkey works at this address only. */
export interface Site {
  /** "https://shop.example:7430" */
  readonly origin: string;
  /** Host name without port. */
  readonly host: string;
}

type Options = Awaited<ReturnType<typeof generateRegistrationOptions>>;
type AskOptions = Awaited<ReturnType<typeof generateAuthenticationOptions>>;

export async function newPasskeyOptions(
  { db, clock, session }: OwnDesk,
  site: Site,
): Promise<{ readonly id: string; readonly options: Options }> {
  const known = await passkeysOf(db, session.personId);
  const options = await generateRegistrationOptions({
    rpName: 'Warmstead',
    rpID: site.host,
    userName: session.name,
    userID: new TextEncoder().encode(session.personId),
    attestationType: 'none',
    excludeCredentials: known.map(({ id }) => ({ id })),
    authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
  });
  const until = new Date(clock.now().getTime() + openMs);
  return { id: await insertChallenge(db, options.challenge, session.personId, until), options };
}

/** Faults: "ACCOUNT_PASSKEY". */
export async function keepPasskey(
  { db, clock, session }: OwnDesk,
  site: Site,
  given: { readonly id: string; readonly name: string; readonly response: RegistrationResponseJSON },
): Promise<Result<object>> {
  const at = clock.now();
  const asked = await takeChallenge(db, given.id, at);
  if (asked === undefined || asked.personId !== session.personId) return bad([accountFaults.passkey]);
  const checked = await verifyRegistrationResponse({
    response: given.response,
    expectedChallenge: asked.challenge,
    expectedOrigin: site.origin,
    expectedRPID: site.host,
  }).catch(() => null);
  if (checked === null || !checked.verified) return bad([accountFaults.passkey]);
  const { credential } = checked.registrationInfo;
  if ((await passkeyById(db, credential.id)) !== undefined) return bad([accountFaults.passkey]);
  await db.transaction().execute(async (tx) => {
    await insertPasskey(tx, {
      id: credential.id,
      personId: session.personId,
      publicKey: Buffer.from(credential.publicKey),
      counter: credential.counter,
      transports: credential.transports ?? [],
      name: given.name.trim().slice(0, 60) || 'passkey',
      at,
    });
    await addPersonChange(tx, session.personId, { kind: 'passkey', was: {}, now: {} }, { at, by: session.name });
  });
  return good({});
}

/** Faults: "ACCOUNT_UNKNOWN". */
export async function dropPasskey({ db, clock, session }: OwnDesk, id: string): Promise<Result<object>> {
  const at = clock.now();
  if (!(await removePasskey(db, session.personId, id, at))) return bad([accountFaults.unknown(id)]);
  await addPersonChange(db, session.personId, { kind: 'passkey-gone', was: {}, now: {} }, { at, by: session.name });
  return good({});
}

export async function passkeyQuestion(
  { db, clock }: AccountDesk,
  site: Site,
): Promise<{ readonly id: string; readonly options: AskOptions }> {
  // Names no passkeys: a stranger learns nothing of who works here.
  const options = await generateAuthenticationOptions({ rpID: site.host, userVerification: 'required' });
  const until = new Date(clock.now().getTime() + openMs);
  return { id: await insertChallenge(db, options.challenge, null, until), options };
}

/** Faults: "ACCOUNT_PASSKEY". */
export async function signInByPasskey(
  desk: AccountDesk,
  site: Site,
  given: { readonly id: string; readonly response: AuthenticationResponseJSON },
  way: WayIn,
): Promise<Result<{ readonly token: string }>> {
  const { db, clock } = desk;
  const at = clock.now();
  const asked = await takeChallenge(db, given.id, at);
  const passkey = asked === undefined ? undefined : await passkeyById(db, given.response.id);
  const person = passkey === undefined ? undefined : await personById(db, passkey.personId);
  if (asked === undefined || passkey === undefined || person === undefined || person.disabled) {
    return bad([accountFaults.passkey]);
  }
  const checked = await verifyAuthenticationResponse({
    response: given.response,
    expectedChallenge: asked.challenge,
    expectedOrigin: site.origin,
    expectedRPID: site.host,
    credential: { id: passkey.id, publicKey: new Uint8Array(passkey.publicKey), counter: passkey.counter },
  }).catch(() => null);
  if (checked === null || !checked.verified) return bad([accountFaults.passkey]);
  await markPasskeyUsed(db, passkey.id, checked.authenticationInfo.newCounter, at);
  await forgetWrong(db, 'pin', person.id);
  return good({ token: await openSession(desk, { person, how: 'passkey', ...way }) });
}
