// Every way back of docs/taking-back.md that stands on the sheets of the shop: animals and the round, own values and rules, the
// shelf, people, the own account. Each is pressed after the page was loaded again, and the program is asked whether it is undone.
import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { takeInFit } from '../src/server/testing/fit-animal.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { cookieFrom, ownerPassword } from './support/owner.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { daysAgo, sent, takenBack, told } from './support/taken-back.ts';

let program: RunningProgram;
let browser: Browser;
let page: Page;

const at = (path: string): string => `${program.url}${path}`;
const fit = async (callName: string): Promise<string> =>
  await takeInFit(async (path, body) => await sent(at(path), body), daysAgo, { callName });

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly corrects: string | null;
  readonly body: Record<string, unknown> | null;
}
interface Animal {
  readonly entry: Record<string, string>;
  readonly history: readonly Row[];
  readonly fitness: { readonly answer: string };
}
/** Entries of a kind that count: neither corrected nor withdrawn. */
const standing = async (id: string, kind: string): Promise<readonly unknown[]> => {
  const { history } = await told<Animal>(at(`/api/animals/${id}`));
  const gone = new Set(history.map((row) => row.corrects));
  return history.filter((row) => row.kind === kind && !gone.has(row.id) && row.body !== null).map((row) => row.body);
};

describeInBrowser('ways back on the sheets of the shop', () => {
  beforeAll(async () => {
    program = await startProgram({});
    browser = await launchBrowser();
    page = await browser.newPage({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  test('an animal: an entry withdrawn, an entry corrected back, the register corrected back', async () => {
    const id = await fit('Juniper');
    const sheet = at(`/animals/${id}`);
    const line = (on: Page, words: string) => on.locator('.history-list li:not(.history-replaced)', { hasText: words });
    const withdraw = async (on: Page, words: string) => {
      const row = line(on, words).first();
      await row.getByRole('button', { name: 'Withdraw' }).click();
      await row.getByLabel('Why is it withdrawn?').fill('another animal');
      await row.getByRole('button', { name: 'Withdraw' }).last().click();
    };
    await takenBack(page, {
      at: sheet,
      stands: async () => await standing(id, 'weighing'),
      act: async (on) => {
        await on.getByLabel(/^Mass, g/).fill('571');
        await on.getByRole('button', { name: 'Write it down' }).click();
      },
      back: async (on) => await withdraw(on, '571 g'),
    });
    const mend = async (on: Page, was: string, now: string) => {
      const row = line(on, was).first();
      await row.getByRole('button', { name: 'Correct it' }).click();
      await row.getByLabel(/^Mass, g/).fill(now);
      await row.getByLabel('Why is it corrected?').fill('read again');
      await row.getByRole('button', { name: 'Write the correction down' }).click();
    };
    await takenBack(page, {
      at: sheet,
      stands: async () => new Set((await standing(id, 'weighing')).map((body) => (body as { massG: number }).massG)),
      act: async (on) => await mend(on, '552 g', '525'),
      back: async (on) => await mend(on, '525 g', '552'),
    });
    const named = (name: string) => async (on: Page) => {
      await on.getByRole('button', { name: 'Correct the register' }).click();
      await on.getByLabel('Name or number').fill(name);
      await on.getByLabel(/^Why is it changed/).fill('misheard');
      await on
        .locator('section', { hasText: 'Why is it changed' })
        .getByRole('button', { name: 'Write it down' })
        .click();
    };
    const register = async () => (await told<Animal>(at(`/api/animals/${id}`))).entry;
    await takenBack(page, { at: sheet, stands: register, act: named('Sorrel'), back: named('Juniper') });
  });

  test('a look-over that was finished wrongly: a new one counts', async () => {
    const id = await fit('Clover');
    const look = (sign: RegExp | null) => async (on: Page) => {
      await on.getByRole('button', { name: /^Look it over|^Go on with the look-over/ }).click();
      for (let step = 1; step <= 12; step++) {
        await on.getByText(`Step ${step} of 12`).waitFor();
        if (step === 4 && sign !== null) await on.getByLabel(sign).check();
        await on.getByRole('button', { name: /Next$/ }).click();
      }
      await on.getByRole('button', { name: 'Finish' }).click();
      await on.getByRole('button', { name: 'Back to the animal' }).click();
    };
    await takenBack(page, {
      at: at(`/animals/${id}`),
      stands: async () => (await told<Animal>(at(`/api/animals/${id}`))).fitness.answer,
      act: look(/Breathes with open mouth/),
      back: look(null),
    });
  });

  test('a check of the round is withdrawn in the history of its animal', async () => {
    const id = await fit('Tansy');
    await sent(at(`/api/animals/${id}/entries`), {
      kind: 'movement',
      on: daysAgo(0),
      body: { toBranchId: '', toPlace: 'R7', why: '' },
    });
    await takenBack(page, {
      at: at('/round'),
      backAt: at(`/animals/${id}`),
      stands: async () => (await standing(id, 'round')).length,
      act: async (on) => await on.getByRole('button', { name: 'R7: Well' }).click(),
      back: async (on) => {
        const row = on.locator('.history-list li', { hasText: 'Round' }).first();
        await row.getByRole('button', { name: 'Withdraw' }).click();
        await row.getByLabel('Why is it withdrawn?').fill('the neighbour was looked at');
        await row.getByRole('button', { name: 'Withdraw' }).last().click();
      },
    });
  });

  test('own values: of a species, the standard, a rule of release; back to what was shipped', async () => {
    interface Overlays {
      readonly overlays: readonly { readonly path: string; readonly withdrawn: object | null }[];
    }
    const own = async () =>
      (await told<Overlays>(at('/api/reference'))).overlays
        .filter((one) => one.withdrawn === null)
        .map((one) => one.path);
    const why = async (on: Page) =>
      await on.getByLabel('Why (customers read it)').fill('Our own readings of four winters');
    const basking = (on: Page) => on.getByRole('button', { name: 'Use our own value: Basking surface', exact: true });
    await takenBack(page, {
      at: at('/species/corn'),
      stands: own,
      act: async (on) => {
        await basking(on).click();
        await on
          .getByRole('button', { name: 'more: from' })
          .or(on.getByRole('button', { name: /from/i }))
          .first()
          .click();
        await why(on);
        await on.getByRole('button', { name: 'Keep', exact: true }).click();
      },
      back: async (on) => {
        await basking(on).click();
        await why(on);
        await on.getByRole('button', { name: 'Back to the shipped value' }).click();
      },
    });
    await takenBack(page, {
      at: at('/space/corn'),
      stands: own,
      act: async (on) => {
        await why(on);
        await on.getByRole('button', { name: 'Keep', exact: true }).click();
      },
      back: async (on) => {
        await why(on);
        await on.getByRole('button', { name: 'Back to the shipped value' }).click();
      },
    });
    interface Policy {
      readonly policy: readonly { readonly id: string; readonly absolute: string }[];
    }
    const rule = (press: string) => async (on: Page) => {
      await on.locator('summary', { hasText: 'What this shop holds absolute' }).click();
      await on.getByLabel('Requirement').selectOption('home-proven');
      await on.getByLabel('Why', { exact: true }).fill('so decided by all');
      await on.getByRole('button', { name: press }).click();
    };
    await takenBack(page, {
      at: at('/placements'),
      stands: async () =>
        (await told<Policy>(at('/api/placements'))).policy.find((one) => one.id === 'home-proven')?.absolute,
      act: rule('Make it absolute'),
      back: rule('Leave it to the managers'),
    });
  });

  test('the shelf: the last change undone, an earlier shelf put back and the later one again', async () => {
    interface Shown {
      readonly shelf: { readonly items: readonly { readonly inStock?: boolean }[] };
    }
    const shelf = async () => (await told<Shown>(at('/api/shelf'))).shelf.items;
    const sellOut = async (on: Page) =>
      await on.getByRole('row').filter({ hasText: 'Heat mat 16 W' }).getByRole('button', { name: 'in stock' }).click();
    await takenBack(page, {
      at: at('/shelf'),
      stands: shelf,
      act: sellOut,
      back: async (on) => await on.getByRole('button', { name: 'Undo the last change' }).click(),
    });
    await takenBack(page, {
      at: at('/shelf'),
      stands: shelf,
      act: sellOut,
      back: async (on) => await on.getByRole('button', { name: 'Put version 0 back' }).click(),
    });
    await takenBack(page, {
      at: at('/shelf'),
      stands: shelf,
      act: async (on) => await on.getByRole('button', { name: 'Put version 1 back' }).click(),
      back: async (on) => await on.getByRole('button', { name: 'Put version 0 back' }).click(),
    });
  });

  test('people: added, another role, sign-in stopped, a code; each undone, and the undoing too', async () => {
    interface People {
      readonly people: readonly { readonly name: string; readonly role: string; readonly disabled: boolean }[];
    }
    const person = async () => {
      const found = (await told<People>(at('/api/people'))).people.find((one) => one.name === 'Robin Vale');
      return found === undefined || found.disabled ? null : found.role;
    };
    const undo = async (on: Page) => await on.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await takenBack(page, {
      at: at('/people'),
      stands: person,
      act: async (on) => {
        await on.getByLabel('Name', { exact: true }).fill('Robin Vale');
        await on.getByRole('button', { name: 'Add', exact: true }).first().click();
      },
      back: undo,
    });
    await takenBack(page, { at: at('/people'), stands: person, act: undo, back: undo });
    await undo(page);
    await expect.poll(person).toBe('assistant');
    const role = (on: Page) => on.getByLabel('Role: Robin Vale');
    await takenBack(page, {
      at: at('/people'),
      stands: person,
      act: async (on) => void (await role(on).selectOption('manager')),
      back: undo,
    });
    const row = (on: Page) => on.locator('.account-people li', { hasText: 'Robin Vale' });
    await takenBack(page, {
      at: at('/people'),
      stands: person,
      act: async (on) => await row(on).getByRole('button', { name: 'Stop sign-in' }).click(),
      back: undo,
    });
    await row(page).getByRole('button', { name: 'Code for a new password' }).click();
    const code = await page.locator('.account-code strong').textContent();
    await page.reload();
    await page
      .locator('.account-list li', { hasText: 'was given a code' })
      .getByRole('button', { name: 'Undo' })
      .first()
      .click();
    await page.getByText('the code of Robin Vale was withdrawn').waitFor();
    const tried = await fetch(at('/api/session/code'), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code, password: 'nine herons over the weir' }),
      credentials: 'omit',
    });
    expect(tried.status, 'the code opens nothing any more').toBeGreaterThanOrEqual(400);
  });

  test('the own account: a PIN dropped, a session ended, a password changed back, the other branch', async () => {
    interface Here {
      readonly me: { readonly hasPin: boolean; readonly branchName: string };
    }
    const me = async () => (await told<Here>(at('/api/session'))).me;
    const account = at('/account');
    await takenBack(page, {
      at: account,
      stands: async () => (await me()).hasPin,
      act: async (on) => {
        await on.getByLabel(/^New PIN/).fill('2846');
        await on.getByLabel('Password now').first().fill(ownerPassword);
        await on.getByRole('button', { name: 'Keep the PIN' }).click();
      },
      back: async (on) => {
        await on.getByLabel('Password now').first().fill(ownerPassword);
        await on.getByRole('button', { name: 'No more PIN' }).click();
      },
    });
    interface Account {
      readonly sessions: readonly object[];
    }
    const other = await cookieFrom(at('/api/session'), { name: 'Test Owner', password: ownerPassword });
    const sessions = async () => (await told<Account>(at('/api/account'))).sessions.length;
    const before = await sessions();
    await page.goto(account);
    await page.getByRole('button', { name: 'End it' }).first().click();
    await expect.poll(sessions).toBe(before - 1);
    expect((await fetch(at('/api/account'), { headers: { cookie: other } })).status).toBe(401);
    await cookieFrom(at('/api/session'), { name: 'Test Owner', password: ownerPassword });
    expect(await sessions()).toBe(before);

    await sent(at('/api/branches'), { name: `Upper floor ${randomUUID().slice(0, 4)}`, place: 'england' });
    const go = (branch: RegExp) => async (on: Page) =>
      await on.getByRole('radiogroup', { name: 'Branch you work at' }).getByLabel(branch).click({ force: true });
    await takenBack(page, {
      at: account,
      stands: async () => (await me()).branchName,
      act: go(/^Upper floor/),
      back: go(/^Counter$/),
    });
    const opens = async (password: string) =>
      (
        await fetch(at('/api/session'), {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ name: 'Test Owner', password }),
          credentials: 'omit',
        })
      ).ok;
    const change = (now: string, next: string) => async (on: Page) => {
      await on.getByLabel('Password now').last().fill(now);
      await on.getByLabel('New password').fill(next);
      await on.getByRole('button', { name: 'Keep the new password' }).click();
      await on.getByText('Kept. Other devices are signed out.').waitFor();
    };
    await page.goto(account);
    await change(ownerPassword, 'nine herons over the weir')(page);
    expect([await opens(ownerPassword), await opens('nine herons over the weir')]).toEqual([false, true]);
    await page.reload();
    await change('nine herons over the weir', ownerPassword)(page);
    expect(await opens(ownerPassword)).toBe(true);
  });
});
