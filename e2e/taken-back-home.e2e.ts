// Every way back of docs/taking-back.md that stands on the sheets of a home: proof, placement, aftercare. Each is pressed after
// the page was loaded again, and the program is asked whether it is undone.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openRecords, type Records } from '../src/records/open.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { answeredDocument, takeInFit } from '../src/server/testing/fit-animal.ts';
import { fittingHome, logFileOf } from '../src/server/testing/fitting-home.ts';
import { releasedPlacement } from '../src/server/testing/released-placement.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { fileWindow } from './support/choose-file.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { noonFourDaysAgoS, provenHome } from './support/proven-home.ts';
import { daysAgo, sent, takenBack, told } from './support/taken-back.ts';

let program: RunningProgram;
let records: Records;
let browser: Browser;
let page: Page;

const at = (path: string): string => `${program.url}${path}`;
const newHome = async (): Promise<string> =>
  String((await sent(at('/api/enquiries'), { document: answeredDocument('Attic', fittingHome()) })).id);
const newPlacement = async (home: { readonly proven: boolean }) => {
  const animalId = await takeInFit(async (path, body) => await sent(at(path), body), daysAgo);
  const enquiryId = await provenHome(program.url, 'Flat above the bakery', home);
  const { id } = await sent(at('/api/placements'), { enquiryId, animalId });
  return { id: String(id), animalId, enquiryId };
};
const released = async () => {
  const branch = await records.db.selectFrom('branch').select('id').executeTakeFirstOrThrow();
  const post = async (path: string, payload: object) => (await sent(at(path), payload)) as { id: string };
  const choice = { at: new Date(Date.now() - 4 * 86_400_000), arrivedOn: daysAgo(60), name: 'Juniper', label: 'Flat' };
  return (await releasedPlacement(post, records.db, branch.id, choice)).placementId;
};

describeInBrowser('ways back on the sheets of a home', () => {
  beforeAll(async () => {
    const url = await freshDatabaseUrl();
    program = await startProgram({ DATABASE_URL: url });
    const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    records = opened.value;
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
  });
  afterAll(async () => {
    await browser?.close();
    await records?.close();
    await program?.stop();
  });

  test('a logger file: taken in and set aside; set aside and let count again; answered and answered again', async () => {
    const id = await newHome();
    const sheet = at(`/proof/${id}`);
    interface Files {
      readonly files: readonly { name: string; understood: { channels: readonly { place: string | null }[] } }[];
    }
    const files = async () => (await told<Files>(at(`/api/enquiries/${id}/reading-files`))).files;
    const names = async () => (await files()).map((file) => file.name);
    const log = {
      name: 'log.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(logFileOf(fittingHome(), noonFourDaysAgoS())),
    };
    const setAside = async (on: Page) => await on.getByRole('button', { name: 'Set this file aside' }).click();
    const again = async (on: Page) => await on.getByRole('button', { name: 'Let it count again' }).click();
    await takenBack(page, {
      at: sheet,
      stands: names,
      act: async (on) => {
        const window = await fileWindow(on, () => on.getByRole('button', { name: 'Choose a logger file' }).click());
        await window.setFiles(log);
      },
      back: setAside,
    });
    await takenBack(page, { at: sheet, stands: names, act: again, back: setAside });
    await again(page);
    await expect.poll(names).toEqual(['log.csv']);
    await takenBack(page, { at: sheet, stands: names, act: setAside, back: again });
    const places = async () => (await files())[0]?.understood.channels.map((channel) => channel.place);
    const where = (on: Page) => on.getByLabel(/^Where did/).first();
    const first = (await places())?.[0] ?? '';
    await takenBack(page, {
      at: sheet,
      stands: places,
      act: async (on) => void (await where(on).selectOption(first === 'room' ? 'cool-air' : 'room')),
      back: async (on) => void (await where(on).selectOption(first)),
    });
  });

  test('a typed reading: typed and set aside; set aside and let count again', async () => {
    const id = await newHome();
    const sheet = at(`/proof/${id}`);
    interface Typed {
      readonly readings: readonly { readonly aside: object | null }[];
    }
    const counting = async () =>
      (await told<Typed>(at(`/api/enquiries/${id}/hand-readings`))).readings.filter((one) => one.aside === null).length;
    const setAside = async (on: Page) => {
      await on.getByRole('button', { name: /^Set aside: reading of/ }).click();
      await on.getByLabel('What is wrong with it?').fill('read at the wrong end');
      await on.getByRole('button', { name: 'Set aside', exact: true }).click();
    };
    const again = async (on: Page) => await on.getByRole('button', { name: /^Let it count again: reading of/ }).click();
    await takenBack(page, {
      at: sheet,
      stands: counting,
      act: async (on) => {
        await on.getByRole('textbox', { name: /^Room/ }).fill('19.5');
        await on.getByRole('button', { name: 'Keep this reading' }).click();
      },
      back: setAside,
    });
    await takenBack(page, { at: sheet, stands: counting, act: again, back: setAside });
  });

  test('a plan that was kept although a stop came: shown, set aside, let count again', async () => {
    const id = await newHome();
    interface Plans {
      readonly results: readonly { readonly aside: object | null }[];
    }
    const counting = async () =>
      (await told<Plans>(at(`/api/enquiries/${id}/plans`))).results.filter((one) => one.aside === null).length;
    const aside = async (on: Page) => await on.getByRole('button', { name: 'Set what is kept aside' }).click();
    const again = async (on: Page) => await on.getByRole('button', { name: 'Let it count again' }).click();
    let answered: () => void = () => undefined;
    const ready = new Promise<void>((done) => {
      answered = done;
    });
    // The shop computer has its answer and has kept it; on the way to the page it is late.
    await page.route('**/api/plan?work=*', async (route) => {
      await route.fetch();
      answered();
    });
    const stoppedTooLate = async (on: Page) => {
      await on.getByRole('button', { name: 'Keep this verdict' }).click();
      await ready;
      await on.getByRole('button', { name: 'Stop', exact: true }).click();
      await on.getByText('What was ready before the stop came is kept').waitFor();
      await on.locator('summary', { hasText: 'Look at what is kept' }).click();
      expect(await on.locator('.kept-needs li').count()).toBeGreaterThan(5);
    };
    await takenBack(page, { at: at(`/plan/${id}`), stands: counting, act: stoppedTooLate, back: aside });
    await page.unroute('**/api/plan?work=*');
    await takenBack(page, { at: at(`/plan/${id}`), stands: counting, act: again, back: aside });
  });

  test('a keeper’s link is given and withdrawn', async () => {
    const id = await newHome();
    interface Links {
      readonly links: readonly { readonly withdrawnAt: string | null }[];
    }
    await takenBack(page, {
      at: at(`/proof/${id}`),
      stands: async () =>
        (await told<Links>(at(`/api/enquiries/${id}/keeper-links`))).links.filter((one) => one.withdrawnAt === null)
          .length,
      act: async (on) => await on.getByRole('button', { name: 'Make a link' }).click(),
      back: async (on) => await on.getByRole('button', { name: 'Withdraw' }).click(),
    });
  });

  test('a check of an instrument is done again; the newest counts', async () => {
    await sent(at('/api/instruments'), { name: 'Counter thermometer' });
    interface Instruments {
      readonly instruments: readonly { readonly temp: { readonly correction: number } }[];
    }
    const correction = async () => (await told<Instruments>(at('/api/instruments'))).instruments[0]?.temp.correction;
    const check = (shown: string) => async (on: Page) => {
      await on.getByRole('button', { name: 'Check it in ice' }).click();
      for (const n of [1, 2]) await on.getByLabel(`Reading ${n} (°C)`).fill(shown);
      await on.getByRole('button', { name: 'Keep this check' }).click();
      await on.getByRole('button', { name: 'Keep this check' }).waitFor({ state: 'detached' });
    };
    await page.goto(at('/instruments'));
    await check('0.2')(page);
    await takenBack(page, { at: at('/instruments'), stands: correction, act: check('2.0'), back: check('0.2') });
  });

  test('a placement: statement, override, refusal, taking up again', async () => {
    const { id } = await newPlacement({ proven: false });
    const sheet = at(`/placement/${id}`);
    interface Placement {
      readonly state: string;
      readonly release: {
        readonly findings: readonly { id: string; statement: { answer: string } | null; override: object | null }[];
      };
    }
    const placement = async () => await told<Placement>(at(`/api/placements/${id}`));
    const finding = async (wanted: string) => (await placement()).release.findings.find((one) => one.id === wanted);
    const row = (on: Page, name: string) => on.locator(`#requirement-${name}`);
    await takenBack(page, {
      at: sheet,
      stands: async () => ((await finding('buyer-age'))?.statement?.answer ?? 'open') !== 'open',
      act: async (on) => await row(on, 'buyer-age').getByRole('button', { name: 'Yes' }).click(),
      back: async (on) => {
        const back = row(on, 'buyer-age').getByRole('button', { name: 'Take back what was said' });
        await row(on, 'buyer-age').locator('summary', { hasText: 'Say it anew' }).click();
        await back.click();
      },
    });
    await takenBack(page, {
      at: sheet,
      stands: async () => (await finding('home-proven'))?.override === null,
      act: async (on) => {
        await row(on, 'home-proven').locator('summary', { hasText: 'Override as a manager' }).click();
        await row(on, 'home-proven')
          .getByLabel(/^Reason/)
          .fill('The home stands in our own back room');
        await row(on, 'home-proven').getByRole('button', { name: 'Override', exact: true }).click();
      },
      back: async (on) => await row(on, 'home-proven').getByRole('button', { name: 'Take the override back' }).click(),
    });
    const state = async () => (await placement()).state;
    const refuse = async (on: Page) => await on.getByRole('button', { name: 'Home is not ready' }).click();
    const reopen = async (on: Page) => await on.getByRole('button', { name: 'Take it up again' }).click();
    await takenBack(page, { at: sheet, stands: state, act: refuse, back: reopen });
    await refuse(page);
    await expect.poll(state).toBe('refused');
    await takenBack(page, { at: sheet, stands: state, act: reopen, back: refuse });
  });

  test('a placement is opened and refused', async () => {
    const animalId = await takeInFit(async (path, body) => await sent(at(path), body), daysAgo, { callName: 'Sorrel' });
    await provenHome(program.url, 'Two rooms, first floor', { proven: false });
    interface Placements {
      readonly placements: readonly { readonly animalId: string; readonly state: string }[];
    }
    const open = async () =>
      (await told<Placements>(at('/api/placements'))).placements.filter(
        (one) => one.animalId === animalId && one.state === 'open',
      ).length;
    await page.goto(at(`/animals/${animalId}`));
    await page.getByRole('link', { name: 'Open a placement for this animal' }).click();
    await page.getByLabel('Enquiry').selectOption({ label: 'Two rooms, first floor' });
    expect(await open()).toBe(0);
    await page.getByRole('button', { name: 'Open the placement' }).click();
    await page.getByRole('heading', { name: 'Sorrel and its home' }).waitFor();
    expect(await open()).toBe(1);
    await page.reload();
    await page.getByRole('button', { name: 'Home is not ready' }).click();
    await expect.poll(open).toBe(0);
  });

  test('a released animal comes back', async () => {
    const id = await released();
    const state = async () => (await told<{ state: string }>(at(`/api/placements/${id}`))).state;
    expect(await state()).toBe('released');
    await page.goto(at(`/placement/${id}`));
    await page.locator('summary', { hasText: 'The animal comes back' }).click();
    await page.reload();
    await page.locator('summary', { hasText: 'The animal comes back' }).click();
    await page.getByLabel('The home did not work').check({ force: true });
    await page.getByLabel('Enclosure it goes to').fill('Q1');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await expect.poll(state).toBe('open');
  });

  test('aftercare: nobody reached, an answer, a task set aside, each taken back; addresses of calendars too', async () => {
    const id = await released();
    const sheet = at(`/aftercare/${id}`);
    interface Aftercare {
      readonly told: readonly { readonly body: { readonly what: string } }[];
      readonly feeds: readonly object[];
    }
    const aftercare = async () => await told<Aftercare>(at(`/api/placements/${id}/aftercare`));
    const heard = async () => (await aftercare()).told.map((one) => one.body.what);
    const enter = async (on: Page) => {
      const button = on.getByRole('button', { name: 'Enter what was said' }).first();
      const form = on.locator('.answer-form');
      await on.getByRole('heading', { name: 'Told so far' }).waitFor();
      if ((await form.count()) === 0) await button.click();
      return form.first();
    };
    const back = async (on: Page) => await on.getByRole('button', { name: 'Take back', exact: true }).first().click();
    await takenBack(page, {
      at: sheet,
      stands: heard,
      act: async (on) => await (await enter(on)).getByRole('button', { name: 'Nobody answered' }).click(),
      back,
    });
    await takenBack(page, {
      at: sheet,
      stands: heard,
      act: async (on) => {
        const form = await enter(on);
        await form.locator('summary', { hasText: 'Not needed any more' }).click();
        await form.getByLabel('Why not?').fill('it lives in our own shop');
        await form.getByRole('button', { name: 'Set aside' }).click();
      },
      back,
    });
    await takenBack(page, {
      at: sheet,
      stands: heard,
      act: async (on) => {
        const form = await enter(on);
        await form.getByRole('radiogroup', { name: 'Is it well?' }).getByLabel('It is well').check({ force: true });
        await form.getByRole('button', { name: 'Keep the answer' }).click();
      },
      back,
    });
    await takenBack(page, {
      at: sheet,
      stands: async () => (await aftercare()).feeds.length,
      act: async (on) => await on.getByRole('button', { name: /^Give an address for the keeper/ }).click(),
      back: async (on) => await on.getByRole('button', { name: 'Take back', exact: true }).last().click(),
    });
    await takenBack(page, {
      at: at('/today'),
      stands: async () => (await told<{ feeds: object[] }>(at('/api/calendar-feeds'))).feeds.length,
      act: async (on) => {
        await on.locator('summary', { hasText: 'All aftercare in the desk' }).click();
        await on.getByRole('button', { name: /^Give an address for the desk/ }).click();
      },
      back: async (on) => {
        await on.locator('summary', { hasText: 'All aftercare in the desk' }).click();
        await on.locator('details.today-calendar').getByRole('button', { name: 'Take back', exact: true }).click();
      },
    });
  });
});
