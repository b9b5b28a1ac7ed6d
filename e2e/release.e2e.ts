// An animal goes to its home, or does not: an easy sale, one refused, one overridden, a rehoming under two laws, and a
// power cut in the middle of a release.
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { takeInFit } from '../src/server/testing/fit-animal.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { checker } from './support/checker.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { provenHome } from './support/proven-home.ts';
import { sideways } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let database: string;

const shots = process.env.WARMSTEAD_SHOTS;
const shot = async (name: string) => {
  if (shots) await page.screenshot({ path: `${shots}/${name}.png`, fullPage: true });
};
const findings = async (): Promise<readonly string[]> =>
  (await checker(page).analyze()).violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
const looked = async (name: string) => {
  for (const width of [1280, 820, 390]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await sideways(page);
    await shot(`${name}-${width}`);
    expect(over, `${name} at ${width}`).toBe(0);
    expect(await findings(), `${name} at ${width}`).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
};

const send = async (path: string, body: object): Promise<Record<string, unknown>> => {
  const answer = await fetch(`${program.url}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  const json = (await answer.json()) as Record<string, unknown>;
  if (!answer.ok) throw new Error(`${path}: ${JSON.stringify(json)}`);
  return json;
};
const read = async (path: string) => (await fetch(`${program.url}${path}`)).json() as Promise<Record<string, unknown>>;
const today = Date.now();
const daysAgo = (days: number) => new Date(today - days * 86_400_000).toISOString().slice(0, 10);

async function placed(
  label: string,
  part: object = {},
  home: { proven: boolean; enclosure?: object } = { proven: true },
) {
  const animalId = await takeInFit(send, daysAgo, part);
  const enquiryId = await provenHome(program.url, label, home);
  const { id } = await send('/api/placements', { enquiryId, animalId });
  return { id: String(id), animalId, enquiryId };
}

const statements = [
  { requirement: 'home-place', place: 'england' },
  { requirement: 'buyer-age', years: 16 },
  { requirement: 'cautions' },
  { requirement: 'vet', text: 'Invented practice, 01234 567' },
  { requirement: 'information' },
];
async function sayAll(id: string, part: object = {}) {
  for (const one of statements)
    await send(`/api/placements/${id}/statements`, {
      answer: 'yes',
      text: '',
      place: null,
      years: null,
      token: randomUUID(),
      ...one,
      ...(one.requirement === 'home-place' ? part : {}),
    });
}
const requirement = (id: string) => page.locator(`#requirement-${id}`);
const countOf = async (id: string, kind: string) => {
  const { events } = (await read(`/api/placements/${id}`)) as { events: { kind: string }[] };
  return events.filter((one) => one.kind === kind).length;
};
const salesOf = async (animalId: string) => {
  const { history } = (await read(`/api/animals/${animalId}`)) as { history: { kind: string }[] };
  return history.filter((one) => one.kind === 'sale').length;
};

describeInBrowser('the release', () => {
  beforeAll(async () => {
    database = await freshDatabaseUrl();
    program = await startProgram({ DATABASE_URL: database });
    browser = await launchBrowser();
    context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
    page = await context.newPage();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('an easy sale: opened from the animal, said by keyboard and hand, kept through a reload, released', async () => {
    const animalId = await takeInFit(send, daysAgo);
    await provenHome(program.url, 'Flat above the bakery', { proven: true });
    await page.goto(`${program.url}/animals/${animalId}`);
    await page.getByRole('link', { name: 'Open a placement for this animal' }).click();
    await page.getByRole('heading', { name: 'Placements' }).waitFor();
    await page.getByLabel('Enquiry').selectOption({ label: 'Flat above the bakery' });
    await looked('placements-new');
    await page.getByRole('button', { name: 'Open the placement' }).click();
    await page.getByRole('heading', { name: 'Juniper and its home' }).waitFor();
    const id = page.url().split('/').at(-1) ?? '';
    await looked('placement-open');

    const release = page.getByRole('button', { name: 'Release Juniper' });
    expect(await release.isDisabled()).toBe(true);
    expect((await release.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await page.getByRole('button', { name: 'Where the home is' }).first().press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('requirement-home-place');
    await requirement('home-place').getByLabel('Place').selectOption('england');
    await requirement('home-place').getByRole('button', { name: 'Keep' }).press('Enter');
    await requirement('home-place').getByText('one law').waitFor();
    await requirement('buyer-age').getByRole('button', { name: 'Yes' }).click();
    await requirement('buyer-age').getByText('The buyer is 16 or older.').waitFor();
    await requirement('cautions').getByRole('button', { name: 'Yes' }).click();
    await requirement('cautions').getByText('Explained.').waitFor();

    // half a word, and the page is loaded again
    await requirement('vet')
      .getByLabel(/Practice and telephone/)
      .fill('Invented practice, 012');
    await page.reload();
    const practice = requirement('vet').getByLabel(/Practice and telephone/);
    await practice.waitFor();
    await expect.poll(() => practice.inputValue()).toBe('Invented practice, 012');
    await practice.fill('Invented practice, 01234 567');
    await requirement('vet').getByRole('button', { name: 'Keep' }).click();
    await requirement('vet').getByText('Invented practice, 01234 567').waitFor();
    expect(await release.isDisabled()).toBe(true);
    await requirement('information').getByRole('button', { name: 'Yes' }).click();
    await page.getByText('Open: every requirement stands.').waitFor();
    await looked('placement-ready');
    await release.click();
    await page.getByText(/^Sold on .*, released by/).waitFor();
    await looked('placement-released');
    expect(await countOf(id, 'released')).toBe(1);
    expect(await salesOf(animalId)).toBe(1);
  });

  test('one refused in one tap with its reason, and taken up again', async () => {
    const { id } = await placed('Garden room', { callName: 'Sorrel' }, { proven: false });
    await page.goto(`${program.url}/placement/${id}`);
    await page.getByRole('button', { name: 'Home is not ready' }).click();
    await page.getByText(/^Refused: Home is not ready\./).waitFor();
    await looked('placement-refused');
    expect(await countOf(id, 'refused')).toBe(1);
    await page.getByRole('button', { name: 'Take it up again' }).click();
    await page.getByText(/^Shut: /).waitFor();
  });

  test('one overridden by a manager with a reason; the look-over cannot be', async () => {
    const { id } = await placed('Study', { callName: 'Clover' }, { proven: false });
    await sayAll(id);
    await page.goto(`${program.url}/placement/${id}`);
    await page.getByText('Shut: requirements that do not stand: 1.').waitFor();
    const proven = requirement('home-proven');
    await proven.getByText('Override as a manager').click();
    await proven.getByLabel(/Reason/).fill('read by us on the spot for a week');
    await looked('placement-overriding');
    await proven.getByRole('button', { name: 'Override', exact: true }).click();
    await proven.getByText(/Overridden by .*: read by us on the spot for a week/).waitFor();
    await page.getByRole('button', { name: 'Release Clover' }).click();
    await page.getByText(/^Sold on/).waitFor();
    await proven.getByText(/Overridden by/).waitFor();

    const held = await placed('Study again', { callName: 'Bryony' }, { proven: false });
    await send(`/api/animals/${held.animalId}/entries`, {
      kind: 'examination',
      body: { answers: { breath: ['bubbles'] }, massG: null, outline: '', note: '' },
    });
    await page.goto(`${program.url}/placement/${held.id}`);
    await requirement('examination').getByText('Absolute: nobody can override it.').waitFor();
    expect(await requirement('examination').getByText('Override as a manager').count()).toBe(0);
  });

  test('a rescue rehoming under two laws: desk in England, home in Scotland; and one that the second law forbids', async () => {
    const { id, animalId } = await placed('Rehoming desk, northern home', {
      callName: 'Yarrow',
      acquiredHow: 'rescued',
    });
    await sayAll(id, { place: 'scotland' });
    await page.goto(`${program.url}/placement/${id}`);
    await requirement('home-place')
      .getByText(/in Scotland, the desk in England: both laws hold/)
      .waitFor();
    await page.getByText(/^Law of the desk’s place, England/).click();
    await page.getByText(/^Law of the home’s place, Scotland/).click();
    await looked('placement-two-laws');
    await page.getByText('Rehomed', { exact: true }).click();
    await page.getByRole('button', { name: 'Release Yarrow' }).click();
    await page.getByText(/^Rehomed on/).waitFor();
    expect(await salesOf(animalId)).toBe(1);

    const king = await placed(
      'A home in Germany',
      { callName: 'Clary', speciesId: 'california-kingsnake' },
      { proven: false },
    );
    await sayAll(king.id, { place: 'germany' });
    await page.goto(`${program.url}/placement/${king.id}`);
    await requirement('species-lawful')
      .getByText(/This species may not go there/)
      .waitFor();
    await requirement('species-lawful').getByText('The law says so: nobody can override it.').waitFor();
    expect(await page.getByRole('button', { name: 'Release Clary' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Law forbids it' }).click();
    await page.getByText(/^Refused: Law forbids it\./).waitFor();
  });

  test('a power cut in the middle of a release: nothing is lost, nothing is doubled', async () => {
    const { id, animalId } = await placed('Flat with old wiring', { callName: 'Teasel' });
    await sayAll(id);
    await page.goto(`${program.url}/placement/${id}`);
    await page.getByText('Open: every requirement stands.').waitFor();
    const port = new URL(program.url).port;
    // Somebody else holds the placement's row, so that the program stands in the middle of its transaction when it dies.
    const other = new pg.Client({ connectionString: database });
    await other.connect();
    await other.query('begin');
    await other.query('select id from placement where id = $1 for update', [id]);
    await page.getByRole('button', { name: 'Release Teasel' }).click();
    const waits =
      "select count(*)::int as n from pg_stat_activity where wait_event_type = 'Lock' and datname = current_database()";
    await expect.poll(async () => (await other.query(waits)).rows[0]?.n, { timeout: 30_000 }).toBeGreaterThan(0);
    await program.crash();
    await other.query('rollback');
    await other.end();
    await page.getByText(/Not yet answered by the shop computer: 1/).waitFor();
    await looked('placement-cut');
    program = await startProgram({ DATABASE_URL: database, PORT: port });
    await page.getByText(/^Sold on/).waitFor({ timeout: 30_000 });
    await expect.poll(() => page.getByText(/Not yet answered/).count()).toBe(0);
    expect(await countOf(id, 'released')).toBe(1);
    expect(await salesOf(animalId)).toBe(1);
  });

  test('the program dies before the page does: what was tapped waits through a reload and is sent once', async () => {
    const { id, animalId } = await placed('Flat without a meter', { callName: 'Fennel' });
    await sayAll(id);
    await page.goto(`${program.url}/placement/${id}`);
    await page.getByText('Open: every requirement stands.').waitFor();
    const port = new URL(program.url).port;
    await program.crash();
    await page.getByRole('button', { name: 'Release Fennel' }).click();
    await page.getByText(/Not yet answered by the shop computer: 1/).waitFor();
    program = await startProgram({ DATABASE_URL: database, PORT: port });
    await Promise.all([
      page.waitForResponse((one) => one.url().endsWith('/release'), { timeout: 60_000 }),
      page.reload(),
    ]);
    await page.getByText(/^Sold on/).waitFor({ timeout: 30_000 });
    await page.reload();
    await page.getByText(/^Sold on/).waitFor();
    expect(await countOf(id, 'released')).toBe(1);
    expect(await salesOf(animalId)).toBe(1);

    // and it comes back
    await page.getByText('The animal comes back').click();
    await page.getByText('The keeper’s circumstances').click();
    await page.getByLabel('Enclosure it goes to').fill('Q4');
    await looked('placement-return');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText(/^Shut: /).waitFor();
    expect(await read(`/api/animals/${animalId}`)).toMatchObject({ gone: false, enclosure: 'Q4' });
  });

  test('in German, from the list', async () => {
    await page.goto(`${program.url}/placements`);
    await page.getByRole('heading', { name: 'Placements', exact: true }).waitFor();
    await looked('placements');
    await page.getByText('What this shop holds absolute').click();
    await page.getByLabel('Requirement').selectOption('lock');
    await page.getByLabel('Why', { exact: true }).fill('two escapes last year');
    await looked('placements-policy');
    await page.getByRole('button', { name: 'Make it absolute' }).click();
    await page.getByText(/Set by .*: two escapes last year/).waitFor();
    const { policy } = (await read('/api/placements')) as { policy: { id: string; absolute: string }[] };
    expect(policy.find((one) => one.id === 'lock')?.absolute).toBe('absolute');
    const german = await (
      await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'de-DE' })
    ).newPage();
    const before = page;
    page = german;
    const { id } = await placed('Wohnung über der Bäckerei', { callName: 'Salbei' }, { proven: false });
    await page.goto(`${program.url}/placement/${id}`);
    await page.getByRole('heading', { name: 'Salbei und sein Heim' }).waitFor();
    await looked('placement-german');
    page = before;
  });
});
