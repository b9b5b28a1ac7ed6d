// After the release: the desk sees what is due, a calendar carries it, the keeper answers without a connection, the shop
// hears of it once, looks again where it should, and the list empties.
import ICAL from 'ical.js';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openRecords, type Records } from '../src/records/open.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { type ReleasedForTests, releasedPlacement } from '../src/server/testing/released-placement.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let records: Records;
let browser: Browser;
let desk: Page;
let phone: Page;
let phoneContext: BrowserContext;
let one: ReleasedForTests;
let secret: string;

const shots = process.env.WARMSTEAD_SHOTS;
const widths = { wide: 1280, tablet: 820, phone: 390 } as const;
/** Each page at the three widths when asked for. */
async function shoot(name: string, of: Page): Promise<void> {
  if (!shots) return;
  const before = of.viewportSize() ?? { width: 1280, height: 900 };
  for (const [size, width] of Object.entries(widths)) {
    await of.setViewportSize({ width, height: 900 });
    await of.screenshot({ path: `${shots}/${name}-${size}.png`, fullPage: true });
  }
  await of.setViewportSize(before);
}
const findings = async (of: Page): Promise<readonly string[]> =>
  (await checker(of).analyze()).violations.map((v) => `${v.id}: ${v.nodes[0]?.html ?? ''}`);
const day = (ago: number): string => new Date(Date.now() - ago * 86_400_000).toISOString().slice(0, 10);

const told = async (): Promise<number> => {
  const { count } = await records.db
    .selectFrom('placement_event')
    .select((eb) => eb.fn.countAll<string>().as('count'))
    .where('placement_id', '=', one.placementId)
    .where('kind', '=', 'aftercare')
    .executeTakeFirstOrThrow();
  return Number(count);
};

describeInBrowser('after the release', () => {
  beforeAll(async () => {
    const url = await freshDatabaseUrl();
    program = await startProgram({ DATABASE_URL: url });
    const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    records = opened.value;
    const branch = await records.db.selectFrom('branch').select('id').executeTakeFirstOrThrow();
    const post = async (path: string, payload: object) => {
      const answer = await fetch(`${program.url}${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(payload),
      });
      return (await answer.json()) as { id: string };
    };
    // It left four days ago: the first call is two days late.
    one = await releasedPlacement(post, records.db, branch.id, {
      at: new Date(Date.now() - 4 * 86_400_000),
      arrivedOn: day(60),
      name: 'Juniper',
      label: 'Flat above the bakery',
    });
    const link = await post(`/api/enquiries/${one.enquiryId}/keeper-links`, { days: 200 });
    secret = (link as unknown as { secret: string }).secret;
    browser = await launchBrowser();
    desk = await (await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' })).newPage();
    phoneContext = await browser.newContext({
      viewport: { width: 390, height: 844 },
      locale: 'en-GB',
      hasTouch: true,
    });
    phone = await phoneContext.newPage();
  });
  afterAll(async () => {
    await browser?.close();
    await records?.close();
    await program?.stop();
  });

  test('Today shows the overdue call first, and leads to it', async () => {
    await desk.goto(`${program.url}/today`);
    const row = desk.getByRole('link', { name: /Overdue Call the keeper: the first nights Juniper/ });
    await row.waitFor();
    expect(await findings(desk)).toEqual([]);
    await shoot('today', desk);
    await desk.setViewportSize({ width: 390, height: 844 });
    expect(await sideways(desk)).toBe(0);
    await desk.setViewportSize({ width: 1280, height: 900 });
    await row.click();
    await desk.getByRole('heading', { name: 'Aftercare: Juniper' }).waitFor();
    await desk.getByRole('radiogroup', { name: 'Is it well?' }).waitFor();
    expect(await desk.getByRole('radiogroup', { name: 'Is it well?' }).count()).toBe(1);
    expect(await findings(desk)).toEqual([]);
    await shoot('aftercare', desk);
    expect(await sideways(desk)).toBe(0);
  });

  test('the calendar file of the page is read by another parser', async () => {
    const [download] = await Promise.all([
      desk.waitForEvent('download'),
      desk.getByRole('link', { name: 'Calendar file' }).click(),
    ]);
    const stream = await download.createReadStream();
    const chunks: Buffer[] = [];
    for await (const chunk of stream) chunks.push(chunk as Buffer);
    const root = new ICAL.Component(ICAL.parse(Buffer.concat(chunks).toString('utf8')));
    const events = root.getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
    expect(events.length).toBeGreaterThan(4);
    const call = events.find((event) => event.summary.startsWith('Call the keeper: the first nights'));
    expect(call?.startDate.toString()).toBe(day(2));
    expect(call?.startDate.isDate).toBe(true);
  });

  test('the keeper answers without a connection, one question a screen, and hears what to look at first', async () => {
    await phone.goto(`${program.url}/k/${secret}`);
    await phone.getByRole('heading', { name: 'What the shop would like to know' }).waitFor();
    await phone.evaluate(async () => (await navigator.serviceWorker.ready).scope);
    await phone.reload();
    await phone.getByRole('heading', { name: 'What the shop would like to know' }).waitFor();
    expect(await findings(phone)).toEqual([]);
    if (shots) await phone.screenshot({ path: `${shots}/keeper-tasks.png`, fullPage: true });
    await phoneContext.setOffline(true);
    await phone.getByRole('button', { name: 'Answer: The first nights' }).click();
    await phone.getByText('It is well').click();
    if (shots) await phone.screenshot({ path: `${shots}/keeper-question.png` });
    expect(await findings(phone)).toEqual([]);
    await phone.getByRole('button', { name: 'Next' }).click();
    await phone.getByText('Offered, not taken').click();
    await phone.getByRole('button', { name: 'Next' }).click();
    await phone.getByRole('textbox', { name: /Cool end/ }).fill('31');
    await phone.getByRole('textbox', { name: /Cool end/ }).blur();
    if (shots) await phone.screenshot({ path: `${shots}/keeper-readings.png` });
    await phone.getByRole('button', { name: 'Next' }).click();
    // The phone rings, the page goes away, and comes back without a connection: what was said is still there.
    await phone.reload();
    await phone.getByRole('button', { name: 'Answer: The first nights' }).click();
    expect(await phone.getByRole('radio', { name: 'It is well' }).isChecked()).toBe(true);
    for (let i = 0; i < 3; i++) await phone.getByRole('button', { name: 'Next' }).click();
    for (let i = 0; i < 2; i++) await phone.getByRole('button', { name: 'I do not know' }).click();
    await phone.getByRole('button', { name: 'Send the answers' }).click();
    await phone.getByRole('heading', { name: 'Put the enclosure right' }).waitFor();
    expect(await findings(phone)).toEqual([]);
    if (shots) await phone.screenshot({ path: `${shots}/keeper-first.png`, fullPage: true });
    await phone.getByRole('button', { name: 'Understood' }).click();
    await phone.getByText('Waiting on this phone: 1.').waitFor();
    expect(await told()).toBe(0);
  });

  test('sent once when the connection is back, and not again', async () => {
    await phoneContext.setOffline(false);
    await phone.getByText('Sent. The shop knows.').waitFor();
    expect(await told()).toBe(1);
    await phone.reload();
    await phone.getByText(/Next: /).waitFor();
    await expect.poll(() => phone.getByRole('button', { name: 'Answer: The first nights' }).count()).toBe(0);
    expect(await told()).toBe(1);
  });

  test('the desk sees what asks for a second look, and Today empties', async () => {
    await desk.goto(`${program.url}/today`);
    await desk.getByRole('link', { name: /It did not eat/ }).waitFor();
    const overdue = desk.getByRole('link', { name: /Overdue Call the keeper: the first nights/ });
    expect(await overdue.count()).toBe(0);
    await shoot('today-told', desk);
    await desk.getByRole('button', { name: 'Looked at' }).click();
    await desk.getByText('Nothing that cannot wait.').waitFor();
    expect(await findings(desk)).toEqual([]);
    await desk.getByRole('button', { name: /Take back: Call the keeper: the first nights/ }).click();
    await overdue.waitFor();
    await desk.goto(`${program.url}/aftercare/${one.placementId}`);
    await desk.getByText('Nothing was heard yet.').waitFor();
  });

  test('what was said on the phone is entered at the desk', async () => {
    await desk.getByRole('button', { name: 'Enter what was said' }).first().click();
    await desk.getByText('It is well').click();
    await desk.getByText('Yes, eaten').click();
    await desk.getByRole('button', { name: 'Keep the answer' }).click();
    await desk.getByText('It is well · Yes, eaten').waitFor();
    await desk.goto(`${program.url}/today`);
    await desk.getByRole('heading', { name: 'Done today' }).waitFor();
    expect(await desk.getByRole('link', { name: /Overdue/ }).count()).toBe(0);
    await shoot('today-done', desk);
  });

  test('own figures say how few they are', async () => {
    await desk.goto(`${program.url}/own-figures`);
    await desk.getByRole('heading', { name: 'How our animals fared' }).waitFor();
    expect(await findings(desk)).toEqual([]);
    await shoot('figures', desk);
    await desk.goto(`${program.url}/instruments`);
    await desk.getByRole('heading', { level: 1, name: 'Instruments' }).waitFor();
    expect(await findings(desk)).toEqual([]);
  });
});
