import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Records } from '../records/open.ts';
import { insertProofResult } from '../records/readings.ts';
import { firstBranch } from '../records/shops.ts';
import { freshRecords } from '../records/testing/fresh-database.ts';
import { appAsOwner, steppingClock } from '../server/testing/app-for-tests.ts';
import { answeredDocument, type Send, takeInFit } from '../server/testing/fit-animal.ts';
import type { App } from '../server/types.ts';
import type { DeskContext, Role } from './desk-context.ts';
import { openPlacement } from './open-placement.ts';
import { overrideRequirement } from './override-requirement.ts';
import { startPlanner } from './planner.ts';
import { refuseSale, reopenPlacement, takeBack } from './refuse-sale.ts';
import { releaseAnimal } from './release-animal.ts';
import { setOverlay } from './set-overlay.ts';
import { showPlacement } from './show-placement.ts';
import { stateRequirement } from './state-requirement.ts';

let records: Records;
let app: App;
let branchId: string;
const planner = startPlanner(1);
const clock = steppingClock();
const as = (role: Role): DeskContext => ({ actor: { name: role, branchId, role }, clock, db: records.db });
const send: Send = async (path, body) => {
  const answer = await app.inject({ method: 'POST', url: path, payload: body });
  if (answer.statusCode >= 300) throw new Error(`${path}: ${answer.body}`);
  return answer.json();
};
const daysAgo = (days: number) => new Date(Date.parse('2026-01-15') - days * 86_400_000).toISOString().slice(0, 10);

beforeAll(async () => {
  records = await freshRecords();
  const branch = await firstBranch(records.db, { shopName: 'Test shop', branchName: 'Counter', at: clock.now() });
  branchId = branch.branchId;
  app = (await appAsOwner({ records, branch, planner, db: records.db, clock })).app;
});
afterAll(async () => {
  await app.close();
  await planner.close();
  await records.close();
});

/** A placement of a fit animal; with a kept proof of its home unless it is to be without. */
async function placement({ proven = true, enclosure = {} as object } = {}) {
  const animalId = await takeInFit(send, daysAgo);
  const { id } = await send('/api/enquiries', { document: answeredDocument('A home', enclosure) });
  const enquiryId = String(id);
  if (proven) {
    const kept = { answer: { verdict: 'proven' }, inputs: {}, enquiryVersion: 1, modelVersion: 't', dataVersion: 't' };
    await insertProofResult(records.db, { enquiryId, ...kept }, { at: clock.now(), by: 'tester' });
  }
  const opened = await openPlacement(as('assistant'), { enquiryId, animalId });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return { id: opened.value.id, animalId, enquiryId };
}

const saying = { text: '', place: null, years: null };
async function sayAll(id: string) {
  for (const part of [
    { requirement: 'home-place', place: 'england' },
    { requirement: 'buyer-age', years: 16 },
    { requirement: 'cautions' },
    { requirement: 'vet', text: 'Invented practice, 0123' },
    { requirement: 'information' },
  ]) {
    const said = await stateRequirement(as('assistant'), id, {
      ...saying,
      answer: 'yes',
      token: randomUUID(),
      ...part,
    });
    expect(said).toMatchObject({ ok: true });
  }
}
const release = (id: string, token: string = randomUUID()) =>
  releaseAnimal(as('assistant'), id, { outcome: 'sold', token });
const codes = (answer: { ok: boolean; faults?: readonly { code: string; field: string }[] }) =>
  answer.ok ? [] : (answer.faults ?? []).map(({ code, field }) => `${code} ${field}`);
const stateOf = async (id: string) => {
  const shown = await showPlacement(as('inspector'), id);
  return shown.ok ? shown.value.state : null;
};

describe('a release', () => {
  test('is refused with every requirement that does not stand, all at once, and writes nothing', async () => {
    const { id, animalId } = await placement({ proven: false });
    expect(codes(await release(id))).toEqual(
      [
        'home-proven',
        'home-place',
        'buyer-age',
        'species-lawful',
        'papers',
        'licences',
        'cautions',
        'vet',
        'information',
      ].map((one) => `RELEASE_SHUT ${one}`),
    );
    expect(await stateOf(id)).toBe('open');
    const sheet = await app.inject({ method: 'GET', url: `/api/animals/${animalId}` });
    expect(sheet.json()).toMatchObject({ gone: false });
  });

  test('goes through when all stands; the register has its entry; the same token again changes nothing', async () => {
    const { id, animalId } = await placement();
    await sayAll(id);
    const token = randomUUID();
    const [one, two] = await Promise.all([release(id, token), release(id, token)]);
    expect([one.ok, two.ok]).toEqual([true, true]);
    expect(await release(id, token)).toMatchObject({ ok: true, value: { state: 'released' } });
    expect(codes(await release(id))).toEqual(['PLACEMENT_STATE state']);
    const shown = await showPlacement(as('owner'), id);
    const events = shown.ok ? shown.value.events : [];
    expect(events.filter((event) => event.kind === 'released')).toHaveLength(1);
    const kept = events.at(-1)?.body as { requirements: unknown[]; places: unknown[]; proofResultId: string };
    expect(kept.requirements).toHaveLength(26);
    expect(kept.places).toEqual([{ place: 'england', role: 'desk' }]);
    const { gone, history } = (await app.inject({ method: 'GET', url: `/api/animals/${animalId}` })).json();
    expect(gone).toBe(true);
    expect(history.filter((row: { kind: string }) => row.kind === 'sale')).toMatchObject([
      { body: { outcome: 'sold', reference: id }, by: 'assistant' },
    ]);
  });

  test('one animal meant for two homes goes to one', async () => {
    const first = await placement();
    const { id } = await send('/api/enquiries', { document: answeredDocument('Another home') });
    const kept = { answer: { verdict: 'proven' }, inputs: {}, enquiryVersion: 1, modelVersion: 't', dataVersion: 't' };
    await insertProofResult(records.db, { enquiryId: String(id), ...kept }, { at: clock.now(), by: 'tester' });
    const second = await openPlacement(as('owner'), { enquiryId: String(id), animalId: first.animalId });
    const secondId = second.ok ? second.value.id : '';
    await sayAll(first.id);
    await sayAll(secondId);
    const both = await Promise.all([release(first.id), release(secondId)]);
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    const late = await openPlacement(as('owner'), { enquiryId: String(id), animalId: first.animalId });
    expect(late).toMatchObject({ ok: false, faults: [{ code: 'PLACEMENT_ANIMAL_GONE' }] });
  });

  test('an inspector only looks', async () => {
    const { id } = await placement();
    const token = randomUUID();
    for (const answer of [
      await releaseAnimal(as('inspector'), id, { outcome: 'sold', token }),
      await refuseSale(as('inspector'), id, { reason: 'home', text: '', token }),
      await overrideRequirement(as('inspector'), id, {
        requirement: 'lock',
        reason: 'long enough',
        takeBack: false,
        token,
      }),
    ])
      expect(codes(answer)).toEqual(['PLACEMENT_ROLE role']);
    expect(await stateOf(id)).toBe('open');
  });
});

describe('an override', () => {
  const reason = 'proven by us on the spot, logger lost';
  const override = (role: Role, id: string, requirement: string, part: object = {}) =>
    overrideRequirement(as(role), id, { requirement, reason, takeBack: false, token: randomUUID(), ...part });

  test('is a manager’s, with a reason; then the animal may go, and the release says who and why', async () => {
    const { id } = await placement({ proven: false });
    await sayAll(id);
    expect(codes(await override('assistant', id, 'home-proven'))).toEqual(['PLACEMENT_ROLE role']);
    expect(codes(await override('manager', id, 'home-proven', { reason: 'fine' }))).toEqual(['OVERRIDE_REASON reason']);
    expect(codes(await release(id))).toEqual(['RELEASE_SHUT home-proven']);
    expect(await override('manager', id, 'home-proven')).toMatchObject({
      ok: true,
      value: { release: { open: true } },
    });
    const done = await release(id);
    const kept = done.ok
      ? (done.value.events.at(-1)?.body as { requirements: { id: string; override: unknown }[] })
      : null;
    expect(kept?.requirements.find((one) => one.id === 'home-proven')?.override).toMatchObject({
      by: 'manager',
      reason,
      covers: 'not-known',
    });
  });

  test('never of what is absolute, nor of what is met; it can be taken back', async () => {
    const { id } = await placement({ enclosure: { lock: 'none' } });
    expect(codes(await override('owner', id, 'two-hides'))).toEqual(['OVERRIDE_NEEDLESS two-hides']);
    expect(codes(await override('owner', id, 'nothing-known'))).toEqual(['OVERRIDE_NEEDLESS nothing-known']);
    expect(await override('owner', id, 'lock')).toMatchObject({ ok: true });
    expect(await override('owner', id, 'lock', { takeBack: true })).toMatchObject({ ok: true });
    const shown = await showPlacement(as('owner'), id);
    expect(shown.ok && shown.value.release.findings.find((one) => one.id === 'lock')).toMatchObject({ stands: false });
  });

  test('thermostat and look-over: neither override nor policy opens them', async () => {
    const { id, animalId } = await placement();
    await sayAll(id);
    await send(`/api/animals/${animalId}/entries`, {
      kind: 'examination',
      body: { answers: { breath: ['bubbles'] }, massG: null, outline: '', note: '' },
    });
    expect(codes(await override('owner', id, 'examination'))).toEqual(['OVERRIDE_ABSOLUTE examination']);
    const opened = await setOverlay(as('owner'), {
      path: 'policy.release.examination',
      value: { value: 'manager' },
      why: 'in a hurry',
    });
    expect(codes(opened)).toEqual(['OVERLAY_WORD policy.release.examination']);
    expect(codes(await release(id))).toContain('RELEASE_SHUT examination');
  });

  test('the shop makes one absolute, and another shop value opens it again', async () => {
    const { id } = await placement({ enclosure: { lock: 'none' } });
    const policy = async (value: string) =>
      await setOverlay(as('owner'), { path: 'policy.release.lock', value: { value }, why: 'two escapes last year' });
    expect(await policy('absolute')).toMatchObject({ ok: true });
    expect(codes(await override('owner', id, 'lock'))).toEqual(['OVERRIDE_ABSOLUTE lock']);
    expect(await policy('manager')).toMatchObject({ ok: true });
    expect(await override('owner', id, 'lock')).toMatchObject({ ok: true });
  });
});

describe('what is said', () => {
  const say = (id: string, part: object) =>
    stateRequirement(as('assistant'), id, {
      ...saying,
      requirement: 'vet',
      answer: 'yes',
      token: randomUUID(),
      ...part,
    });

  test('of the household only that it was explained: words about it are refused', async () => {
    const { id } = await placement();
    expect(codes(await say(id, { requirement: 'household', text: 'a baby' }))).toEqual(['STATEMENT_FIELD text']);
    expect(await say(id, { requirement: 'household' })).toMatchObject({ ok: true });
  });

  test('what does not fit is named all at once, and what the program knows is not stated', async () => {
    const { id } = await placement();
    expect(codes(await say(id, { text: ' ', place: 'england', years: 16 }))).toEqual([
      'STATEMENT_FIELD text',
      'STATEMENT_FIELD place',
      'STATEMENT_FIELD years',
    ]);
    expect(codes(await say(id, { requirement: 'home-place', place: 'atlantis' }))).toEqual(['STATEMENT_FIELD place']);
    expect(codes(await say(id, { requirement: 'thermostat' }))).toEqual(['STATEMENT_FIELD requirement']);
  });

  test('two laws: desk in England, home in Germany; a ban there shuts the door for good', async () => {
    const { id, enquiryId } = await placement();
    const animalId = await takeInFit(send, daysAgo, { speciesId: 'california-kingsnake' });
    const opened = await openPlacement(as('owner'), { enquiryId, animalId });
    const king = opened.ok ? opened.value.id : '';
    for (const one of [id, king]) await sayAll(one);
    expect(await say(king, { requirement: 'home-place', place: 'germany', text: '' })).toMatchObject({ ok: true });
    const shown = await showPlacement(as('owner'), king);
    const law = shown.ok ? shown.value.law : [];
    expect(law.map(({ place, role }) => `${role} ${place}`)).toEqual(['desk england', 'home germany']);
    expect(codes(await release(king))).toContain('RELEASE_SHUT species-lawful');
    const tried = await overrideRequirement(as('owner'), king, {
      requirement: 'species-lawful',
      reason: 'the keeper insists on it',
      takeBack: false,
      token: randomUUID(),
    });
    expect(codes(tried)).toEqual(['OVERRIDE_ABSOLUTE species-lawful']);
  });
});

describe('refused, reopened, taken back', () => {
  test('one tap refuses, another takes it up again; other reasons need a word', async () => {
    const { id } = await placement();
    const sent = { reason: 'other', text: '', token: randomUUID() } as const;
    expect(codes(await refuseSale(as('assistant'), id, sent))).toEqual(['REFUSAL_REASON text']);
    const tap = { reason: 'home', text: '', token: randomUUID() } as const;
    expect(await refuseSale(as('assistant'), id, tap)).toMatchObject({ ok: true, value: { state: 'refused' } });
    expect(codes(await release(id))).toEqual(['PLACEMENT_STATE state']);
    const again = await reopenPlacement(as('assistant'), id, { token: randomUUID() });
    expect(again).toMatchObject({ ok: true, value: { state: 'open' } });
  });

  test('an animal that comes back is here again, in quarantine, and nothing said before it left counts', async () => {
    const { id, animalId } = await placement();
    await sayAll(id);
    expect(await release(id)).toMatchObject({ ok: true });
    const back = { reason: 'keeper', text: 'moved abroad', enclosure: 'Q2', token: randomUUID() } as const;
    expect(await takeBack(as('assistant'), id, back)).toMatchObject({ ok: true, value: { state: 'open' } });
    const sheet = (await app.inject({ method: 'GET', url: `/api/animals/${animalId}` })).json();
    expect(sheet).toMatchObject({ gone: false, enclosure: 'Q2', quarantine: { running: true, daysWanted: 90 } });
    const shut = codes(await release(id));
    expect(shut).toEqual(
      expect.arrayContaining(['RELEASE_SHUT quarantine', 'RELEASE_SHUT cautions', 'RELEASE_SHUT vet']),
    );
  });
});
