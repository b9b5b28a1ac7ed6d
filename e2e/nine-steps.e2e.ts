// One animal on its whole way to one home, nine steps on the screens of the program, at a desk, on a tablet and on a phone,
// by touch on the two small ones. A picture of each step at each size is kept in artefacts/nine-steps (or WARMSTEAD_SHOTS).
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Enclosure } from '../src/physics/enclosure.ts';
import { takeInFit } from '../src/server/testing/fit-animal.ts';
import { logFileOf } from '../src/server/testing/fitting-home.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { fileWindow } from './support/choose-file.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { sideways, smallTargets } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;

const folder =
  process.env.WARMSTEAD_SHOTS ?? join(dirname(fileURLToPath(import.meta.url)), '..', 'artefacts', 'nine-steps');

/** Steps whose picture stands in the guide too when it is made anew (npm run guide). */
const inGuide: Readonly<Record<string, string>> =
  process.env.WARMSTEAD_GUIDE === 'yes' ? { '4-proof': 'proof-1280.png', '7-release': 'placement-1280.png' } : {};
const guideFolder = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'guide', 'pictures');

const sizes = [
  { size: 'desk', width: 1280, height: 900, touch: false, callName: 'Juniper', home: 'Flat above the bakery' },
  { size: 'tablet', width: 820, height: 1180, touch: true, callName: 'Sorrel', home: 'Upstairs study' },
  { size: 'phone', width: 390, height: 844, touch: true, callName: 'Clover', home: 'Room to the yard' },
] as const;

const dayMs = 86_400_000;
const daysAgo = (days: number): string => new Date(Date.now() - days * dayMs).toISOString().slice(0, 10);
/** Noon four days ago: three nights up to this morning. */
const firstRowS = (): number => (Math.floor(Date.now() / dayMs) * dayMs - 4 * dayMs + dayMs / 2) / 1000;

const send = async (path: string, body: object): Promise<Record<string, unknown>> => {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${program.url}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
  if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
  return (await answer.json()) as Record<string, unknown>;
};
const read = async (path: string) => (await fetch(`${program.url}${path}`)).json() as Promise<Record<string, unknown>>;

describeInBrowser('nine steps from a first word to the first nights', () => {
  beforeAll(async () => {
    mkdirSync(folder, { recursive: true });
    program = await startProgram();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  describe.each(sizes)('on a $size, $width px wide', ({ size, width, height, touch, callName, home }) => {
    let page: Page;
    let enquiryId: string;
    let animalId: string;
    let placementId: string;

    const press = async (what: Locator): Promise<void> => {
      if (touch) await what.tap();
      else await what.click();
    };
    const choice = (name: RegExp) => page.getByRole('radio', { name }).locator('xpath=ancestor::label');
    const type = async (name: RegExp, value: string): Promise<void> => {
      const field = page.getByRole('textbox', { name });
      await field.fill(value);
      await field.blur();
    };
    const looked = async (step: string): Promise<void> => {
      // A picture of the whole sheet has the lines on top where the window stands.
      await page.evaluate(() => scrollTo(0, 0));
      await page.screenshot({ path: join(folder, `${step}-${size}.png`), fullPage: true });
      if (size === 'desk' && inGuide[step]) await page.screenshot({ path: join(guideFolder, inGuide[step]) });
      expect(await sideways(page), 'nothing runs off the side').toBe(0);
      if (touch) expect(await smallTargets(page)).toEqual([]);
    };

    beforeAll(async () => {
      const context = await browser.newContext({
        viewport: { width, height },
        locale: 'en-GB',
        hasTouch: touch,
        isMobile: touch,
        reducedMotion: 'reduce',
      });
      page = await context.newPage();
      page.on('pageerror', (error) => {
        throw error;
      });
      animalId = await takeInFit(send, daysAgo, { callName });
    });
    afterAll(async () => {
      await page?.context().close();
    });

    test('1 enquiry: who, which animal, which room', async () => {
      await page.goto(program.url);
      await page.locator('.select-box:enabled').waitFor();
      const next = async (): Promise<void> => {
        const on = page.getByRole('button', { name: 'Next' });
        if ((await on.count()) > 0) await press(on);
      };
      await press(page.getByRole('combobox', { name: 'Species' }));
      await press(page.getByRole('option', { name: /Corn snake/ }));
      await press(choice(/^Adult/));
      await looked('1-enquiry');
      await next();
      await type(/Whole length/, '115');
      await next();
      await press(page.getByText('Said aloud and understood'));
      await next();
      await type(/Coldest winter night/, '16');
      await type(/Warmest on a winter day/, '18.5');
      await next();
      await type(/Coolest summer night/, '17');
      await type(/Hottest summer day/, '20');
      await next();
      await type(/humidity in winter/, '55');
      await next();
      await press(choice(/^Never/));
      await next();
      await press(choice(/^Wooden vivarium/));
      await type(/word to find it again/, home);
      await looked('1-enquiry-answered');
      await press(page.getByRole('button', { name: 'See the plan' }));
      await page.waitForURL(/\/plan\/[0-9a-f-]{36}$/);
      enquiryId = page.url().split('/').at(-1) ?? '';
    });

    test('2 plan: does this home work in that room', async () => {
      await page.waitForSelector('h1[data-verdict="holds"]', { timeout: 60_000 });
      await press(page.getByRole('button', { name: 'Keep this verdict' }));
      await page.locator('[data-kept="holds"]').waitFor({ timeout: 60_000 });
      await looked('2-plan');
    });

    test('3 choosing: the kit for it, at a price', async () => {
      await page.goto(`${program.url}/choose/${enquiryId}`);
      const put = page.getByRole('button', { name: 'Put this kit into the plan' });
      await put.first().waitFor({ timeout: 60_000 });
      await page.locator('progress').waitFor({ state: 'detached', timeout: 90_000 });
      await looked('3-choosing');
    });

    test('4 proof: three nights of readings in the empty home', async () => {
      const { document } = (await read(`/api/enquiries/${enquiryId}`)) as { document: { enclosure: Enclosure } };
      await page.goto(`${program.url}/proof/${enquiryId}`);
      await page.getByRole('heading', { name: 'Not judged yet' }).waitFor();
      const chooser = await fileWindow(page, () => press(page.getByRole('button', { name: 'Choose a logger file' })));
      const buffer = Buffer.from(logFileOf(document.enclosure, firstRowS()));
      await chooser.setFiles({ name: 'log.csv', mimeType: 'text/csv', buffer });
      await page.locator('.curve-line').nth(3).waitFor({ state: 'attached' });
      await press(page.getByRole('button', { name: 'Judge the home by these readings' }));
      await page.getByRole('heading', { name: 'Proven', exact: true }).waitFor({ timeout: 90_000 });
      await looked('4-proof');
    });

    test('5 examination: nose to tail', async () => {
      await page.goto(`${program.url}/animals/${animalId}`);
      await press(page.getByRole('button', { name: 'Look it over' }));
      for (let step = 1; step <= 12; step++) {
        await page.getByText(`Step ${step} of 12`).waitFor();
        if (step === 4) await looked('5-examination');
        await press(page.getByRole('button', { name: 'Normal. Next' }));
      }
      await press(page.getByRole('button', { name: 'Finish' }));
      await page.getByRole('heading', { name: 'Nothing that holds it' }).waitFor();
      await looked('5-examination-done');
      await press(page.getByRole('button', { name: 'Back to the animal' }));
    });

    test('6 placement: this animal for this home, and what its keeper is told', async () => {
      await press(page.getByRole('link', { name: 'Open a placement for this animal' }));
      await page.getByRole('heading', { name: 'Placements' }).waitFor();
      await page.getByLabel('Enquiry').selectOption({ label: home });
      await press(page.getByRole('button', { name: 'Open the placement' }));
      await page.getByRole('heading', { name: `${callName} and its home` }).waitFor();
      placementId = page.url().split('/').at(-1) ?? '';
      await looked('6-placement');
      const on = (id: string) => page.locator(`#requirement-${id}`);
      const yes = async (id: string): Promise<void> => await press(on(id).getByRole('button', { name: 'Yes' }));
      await on('home-place').getByLabel('Place').selectOption('england');
      await press(on('home-place').getByRole('button', { name: 'Keep' }));
      await on('home-place').getByText('one law').waitFor();
      await yes('buyer-age');
      await on('buyer-age').getByText('The buyer is 16 or older.').waitFor();
      await yes('cautions');
      await on('cautions').getByText('Explained.').waitFor();
      await on('vet')
        .getByLabel(/Practice and telephone/)
        .fill('Invented practice, 01234 567');
      await press(on('vet').getByRole('button', { name: 'Keep' }));
      await on('vet').getByText('Invented practice, 01234 567').waitFor();
      await yes('information');
    });

    test('7 release: every requirement stands, and it goes', async () => {
      await page.getByText('Open: every requirement stands.').waitFor();
      await looked('7-release');
      await press(page.getByRole('button', { name: `Release ${callName}` }));
      await page.getByText(/^Sold on .*, released by/).waitFor();
      await looked('7-released');
    });

    test('8 pack: made of this animal, this box and this dial', async () => {
      await press(page.getByRole('button', { name: 'Make the pack' }));
      await page.getByText('The pack is ready.').waitFor({ timeout: 90_000 });
      await looked('8-pack');
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        press(page.getByRole('link', { name: 'Save it' })),
      ]);
      await saved.saveAs(join(folder, `8-pack-${size}.pdf`));
      expect(saved.suggestedFilename()).toMatch(/^pack-[0-9a-f]{8}-en\.pdf$/);
    });

    test('9 aftercare: the first nights, as the keeper tells them', async () => {
      await page.goto(`${program.url}/aftercare/${placementId}`);
      await page.getByRole('heading', { name: `Aftercare: ${callName}` }).waitFor();
      const call = page.locator('.aftercare-task', { hasText: 'Call the keeper: the first nights' });
      await press(call.getByRole('button', { name: 'Enter what was said' }));
      await press(page.getByText('It is well'));
      await press(page.getByText('Yes, eaten'));
      await looked('9-aftercare-asked');
      await press(page.getByRole('button', { name: 'Keep the answer' }));
      await page.getByText('It is well · Yes, eaten').waitFor();
      await looked('9-aftercare');
      await page.goto(`${program.url}/today`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await looked('9-today');
    });
  });
});
