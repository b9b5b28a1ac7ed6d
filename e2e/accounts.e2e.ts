// Getting in and staying in: a passkey of the device signs in, and a session that ends in the middle of typing costs no
// word that was typed. A buyer is shown, and erased.
import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openRecords, type Records } from '../src/records/open.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { type ReleasedForTests, releasedPlacement } from '../src/server/testing/released-placement.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { ownerPassword } from './support/owner.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let records: Records;
let browser: Browser;
let site: string;
let home: ReleasedForTests;
let other: ReleasedForTests;

const shots = process.env.WARMSTEAD_SHOTS;
async function shoot(name: string, page: Page): Promise<void> {
  if (!shots) return;
  for (const width of [1280, 820, 390]) {
    await page.setViewportSize({ width, height: 900 });
    await page.screenshot({ path: `${shots}/${name}-${width}.png`, fullPage: true });
  }
  await page.setViewportSize({ width: 1280, height: 900 });
}
const findings = async (page: Page): Promise<readonly string[]> =>
  (await checker(page).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html ?? ''}`);

async function byPassword(page: Page): Promise<void> {
  await page.getByLabel('Name', { exact: true }).fill('Test Owner');
  await page.getByLabel('Password', { exact: true }).fill(ownerPassword);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

describeInBrowser('getting in and staying in', () => {
  beforeAll(async () => {
    const url = await freshDatabaseUrl();
    program = await startProgram({ DATABASE_URL: url });
    // A passkey belongs to a name; a bare number has none.
    site = program.url.replace('127.0.0.1', 'localhost');
    const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    records = opened.value;
    const branch = await records.db.selectFrom('branch').select('id').executeTakeFirstOrThrow();
    const post = async (path: string, payload: object) => {
      const headers = { 'content-type': 'application/json' };
      const answer = await fetch(`${program.url}${path}`, { method: 'POST', headers, body: JSON.stringify(payload) });
      return (await answer.json()) as { id: string };
    };
    const day = (ago: number) => new Date(Date.now() - ago * 86_400_000);
    home = await releasedPlacement(post, records.db, branch.id, {
      at: day(4),
      arrivedOn: day(60).toISOString().slice(0, 10),
      release: false,
      name: 'Juniper',
      label: 'Flat above the bakery',
    });
    other = await releasedPlacement(post, records.db, branch.id, {
      at: day(4),
      arrivedOn: day(60).toISOString().slice(0, 10),
      release: false,
      name: 'Bramble',
      label: 'Quoxley, second floor',
    });
    await post(`/api/placements/${other.placementId}/refusal`, {
      reason: 'other',
      text: 'Quoxley moves away',
      token: randomUUID(),
    });
    const old = await post('/api/enquiries', { document: { answers: { label: 'Umberwick, by the river' } } });
    await records.db
      .updateTable('enquiry')
      .set({ updated_at: day(300) })
      .where('id', '=', old.id)
      .execute();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await records?.close();
    await program?.stop();
  });

  test('a passkey of this device is added, and signs in after signing out', async () => {
    const context = await browser.newContext({ locale: 'en-GB' });
    await context.clearCookies();
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await cdp.send('WebAuthn.enable');
    const { authenticatorId } = await cdp.send('WebAuthn.addVirtualAuthenticator', {
      options: {
        protocol: 'ctap2',
        transport: 'internal',
        hasResidentKey: true,
        hasUserVerification: true,
        isUserVerified: true,
        automaticPresenceSimulation: true,
      },
    });
    await page.goto(`${site}/account`);
    await byPassword(page);
    await page.getByLabel('What you call it').fill('Counter tablet');
    await page.getByRole('button', { name: 'Add a passkey' }).click();
    await page.getByText('Counter tablet').waitFor();
    const { credentials } = await cdp.send('WebAuthn.getCredentials', { authenticatorId });
    expect(credentials).toHaveLength(1);

    await page.getByRole('button', { name: 'Sign out', exact: true }).first().click();
    await page.getByRole('button', { name: 'Use a passkey' }).waitFor();
    const out = await page.evaluate(async () => (await fetch('/api/account')).status);
    expect(out).toBe(401);
    await page.getByRole('button', { name: 'Use a passkey' }).click();
    await page.getByRole('button', { name: 'Use a passkey' }).waitFor({ state: 'detached' });
    await page.goto(`${site}/account`);
    await page.getByText('Counter tablet').waitFor();
    const open = await records.db
      .selectFrom('session')
      .select('how')
      .where('ended_at', 'is', null)
      .where('how', '=', 'passkey')
      .execute();
    expect(open).toHaveLength(1);

    // A key of somebody else's device is refused in words, and the password still opens.
    await page.getByRole('button', { name: 'Sign out', exact: true }).first().click();
    await cdp.send('WebAuthn.removeCredential', { authenticatorId, credentialId: credentials[0]?.credentialId ?? '' });
    await page.getByRole('button', { name: 'Use a passkey' }).click();
    await page.getByRole('alert').filter({ hasText: /./ }).first().waitFor();
    expect(await findings(page)).toEqual([]);
    await byPassword(page);
    await page.getByRole('button', { name: 'Use a passkey' }).waitFor({ state: 'detached' });
    await context.close();
  });

  test('a session that ends while a form is half filled: asked over the sheet, then sent, nothing lost', async () => {
    const context = await browser.newContext({ locale: 'en-GB' });
    const page = await context.newPage();
    await page.goto(`${program.url}/placement/${home.placementId}`);
    await page.getByText('In own words').first().click();
    await page.getByLabel(/^Reason in own words/).fill('They move house in spring');
    await records.db
      .updateTable('session')
      .set({ ended_at: new Date(), ended_why: 'test' })
      .where('ended_at', 'is', null)
      .execute();
    await page.getByRole('button', { name: 'Refuse for this reason' }).click();
    await page.getByLabel('Password', { exact: true }).waitFor();
    await shoot('session-ended', page);
    expect(await findings(page)).toEqual([]);
    const before = await records.db
      .selectFrom('placement_event')
      .selectAll()
      .where('placement_id', '=', home.placementId)
      .where('kind', '=', 'refused')
      .execute();
    expect(before).toEqual([]);
    await page.getByLabel('Password', { exact: true }).fill(ownerPassword);
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await expect
      .poll(
        async () =>
          await records.db
            .selectFrom('placement_event')
            .select(['body', 'by'])
            .where('placement_id', '=', home.placementId)
            .where('kind', '=', 'refused')
            .execute(),
      )
      .toMatchObject([{ body: { reason: 'other', text: 'They move house in spring' }, by: 'Test Owner' }]);
    expect(new URL(page.url()).pathname).toBe(`/placement/${home.placementId}`);
    await context.close();
  });

  test('a buyer is shown what is kept, then erased for a reason; what is due goes at one press', async () => {
    const context = await browser.newContext({ locale: 'en-GB' });
    const page = await context.newPage();
    await page.goto(`${program.url}/placement/${other.placementId}`);
    const password = page.getByLabel('Password', { exact: true });
    const part = page.getByText('What is kept of the buyer');
    await password.or(part).first().waitFor();
    if (await password.isVisible()) await byPassword(page);
    await part.click();
    await page.getByRole('button', { name: 'Show what is kept' }).click();
    await page.getByText('Quoxley, second floor').last().waitFor();
    const file = page.getByRole('link', { name: 'Save everything as a file (JSON)' });
    const [download] = await Promise.all([page.waitForEvent('download'), file.click()]);
    expect(download.suggestedFilename()).toMatch(/^buyer-[0-9a-f]{8}\.json$/);
    await page.getByText('Erase the buyer').click();
    const erase = page.getByRole('button', { name: 'Erase for good' });
    expect(await erase.isDisabled()).toBe(true);
    await page.getByLabel(/^Why \(at least 5 letters/).fill('asked for it');
    await page.getByLabel(/^I have given the buyer/).check();
    await shoot('buyer', page);
    expect(await findings(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    await erase.click();
    await page.getByText(/^The buyer’s own words were erased on .* by Test Owner: asked for it$/).waitFor();
    const rest = await records.db
      .selectFrom('enquiry_version')
      .select('document')
      .where('enquiry_id', '=', other.enquiryId)
      .execute();
    expect(rest.length).toBeGreaterThan(0);
    expect(JSON.stringify(rest)).not.toContain('Quoxley');
    await shoot('buyer-erased', page);

    await page.goto(`${program.url}/placements`);
    await page.getByText('Enquiries due to be erased').click();
    await page.getByText('Umberwick, by the river').last().waitFor();
    await shoot('due', page);
    expect(await findings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Erase all in this list' }).click();
    await page.getByText(/^No enquiry is due/).waitFor();
    await context.close();
  });
});
