// Nobody who uses the program reads a key of data/sources.json or the name that a heater has inside a file: on every sheet of
// a full shop, in both languages, on the pages of pack and register, in calendars and in the terminal.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Enclosure } from '../src/physics/enclosure.ts';
import { openRecords, type Records } from '../src/records/open.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { answeredDocument } from '../src/server/testing/fit-animal.ts';
import { logFileOf } from '../src/server/testing/fitting-home.ts';
import { type ReleasedForTests, releasedPlacement } from '../src/server/testing/released-placement.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { noonFourDaysAgoS } from './support/proven-home.ts';
import { findSheets, openSheet, type Sheet } from './support/sheets.ts';
import { textsOf } from './support/texts.ts';

const root = new URL('../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const sources = JSON.parse(read('data/sources.json')) as Record<string, { title: string; authors?: string }>;
/** Titles and authors may hold a word that is a key as well. */
const named = Object.values(sources)
  .flatMap(({ title, authors = '' }) => [title, authors])
  .filter((text) => text !== '')
  .sort((a, b) => b.length - a.length);

/** A home whose kit has names inside the file that no sentence could hold by chance. */
const kitIds = ['zq-lamp-left', 'zq-lamp-right', 'zq-stat-left', 'zq-stat-right'] as const;
function homeWithOddNames(): Enclosure {
  const box = JSON.parse(read('data/examples/wood-1200.json')) as Enclosure;
  const [heater, thermostat] = [box.heaters[0]!, box.thermostats[0]!];
  const [lampLeft, lampRight, statLeft, statRight] = kitIds;
  const lamp = { ...heater, kind: 'basking-lamp', powerW: 60, period: 'day' } as const;
  return {
    ...box,
    heaters: [
      { ...lamp, id: lampLeft, thermostatId: statLeft },
      { ...lamp, id: lampRight, thermostatId: statRight, xM: heater.xM + 0.2 },
    ],
    thermostats: [
      { ...thermostat, id: statLeft, control: 'dimming' },
      { ...thermostat, id: statRight, control: 'dimming' },
    ],
  };
}

/** Keys and ids that stand in a text as words of their own. */
function keysIn(text: string): string[] {
  const left = named.reduce((rest, title) => rest.replaceAll(title, ' '), text);
  const words = new Set(left.split(/[^A-Za-z0-9_+.-]+/).map((word) => word.replace(/^[.-]+|[.-]+$/g, '')));
  return [...Object.keys(sources), ...kitIds, ...articles].filter((key) => words.has(key));
}

let program: RunningProgram;
let records: Records;
let browser: Browser;
let home: ReleasedForTests;
let articles: readonly string[] = [];

const send = async (path: string, body: object | string, type = 'application/json') => {
  const payload = typeof body === 'string' ? body : JSON.stringify(body);
  const answer = await fetch(`${program.url}${path}`, {
    method: 'POST',
    headers: { 'content-type': type },
    body: payload,
  });
  if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
  return (await answer.json()) as { id: string; secret: string };
};
const bytesOf = async (path: string): Promise<Buffer> =>
  Buffer.from(await (await fetch(`${program.url}${path}`)).arrayBuffer());
const textOfPdf = (pdf: Buffer): string => execFileSync('pdftotext', ['-', '-'], { input: pdf }).toString('utf8');

describeInBrowser('no key and no inner name is read by anybody', () => {
  beforeAll(async () => {
    const url = await freshDatabaseUrl();
    program = await startProgram({ WARMSTEAD_DEMO: 'yes', DATABASE_URL: url });
    const opened = await openRecords({ databaseUrl: url, dataFolder: '' });
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    records = opened.value;
    const branch = await records.db.selectFrom('branch').select('id').executeTakeFirstOrThrow();
    const enclosure = homeWithOddNames();
    const day = (ago: number) => new Date(Date.now() - ago * 86_400_000);
    home = await releasedPlacement(send, records.db, branch.id, {
      at: day(4),
      arrivedOn: day(60).toISOString().slice(0, 10),
      name: 'Juniper',
      label: 'Two lamps',
      document: answeredDocument('Two lamps', enclosure),
    });
    const csv = logFileOf(enclosure, noonFourDaysAgoS());
    await send(`/api/enquiries/${home.enquiryId}/reading-files?name=log.csv`, csv, 'application/octet-stream');
    await send(`/api/enquiries/${home.enquiryId}/proof`, {});
    await send('/api/plan', { enclosure, enquiryId: home.enquiryId });
    const { shelf } = (await (await fetch(`${program.url}/api/shelf`)).json()) as {
      shelf: { items: { id: string }[] };
    };
    articles = shelf.items.map(({ id }) => id);
    browser = await launchBrowser();
  }, 240_000);
  afterAll(async () => {
    await browser?.close();
    await records?.close();
    await program?.stop();
  });

  it('the search for keys finds one that is there', () => {
    expect(articles.length).toBeGreaterThan(40);
    expect(keysIn('Sources: FABENS1965, our choice')).toEqual(['FABENS1965']);
    expect(keysIn('Renew the heater zq-lamp-left.')).toEqual(['zq-lamp-left']);
    expect(keysIn(named.join('; '))).toEqual([]);
  });

  it.each(['en-GB', 'de-DE'])('on no sheet, %s', { timeout: 600_000 }, async (locale) => {
    const own: readonly Sheet[] = [
      { name: 'own plan', path: `/plan/${home.enquiryId}` },
      { name: 'own choose', path: `/choose/${home.enquiryId}` },
      { name: 'own proof', path: `/proof/${home.enquiryId}` },
      { name: 'own placement', path: `/placement/${home.placementId}` },
      { name: 'own aftercare', path: `/aftercare/${home.placementId}` },
    ];
    const found: Record<string, string[]> = {};
    for (const sheet of [...(await findSheets(program)), ...own]) {
      const page = await openSheet(browser, program, sheet, 1280, { locale });
      if (sheet.name.endsWith('choose')) await page.locator('.kit-detail').waitFor({ timeout: 90_000 });
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      const keys = keysIn((await textsOf(page, true)).map(({ text }) => text).join('\n'));
      if (keys.length > 0) found[sheet.name] = keys;
      await page.close();
    }
    expect(found).toEqual({});
  });

  it('aftercare names the heater as the plan does, and its sources by their titles', async () => {
    const path = `/aftercare/${home.placementId}`;
    for (const [locale, title, source] of [
      ['en-GB', 'Renew the heater: basking lamp 2', 'our choice'],
      ['de-DE', 'Wärmequelle erneuern: Spotlampe 2', 'unsere Wahl'],
    ] as const) {
      const page = await openSheet(browser, program, { name: 'aftercare', path }, 1280, { locale });
      const task = page.locator('.aftercare-task', { hasText: title });
      await task.waitFor();
      expect(await task.textContent()).toContain(source);
      await page.close();
    }
  });

  it('in no calendar, on no printed page', async () => {
    const found: Record<string, string[]> = {};
    for (const language of ['en', 'de']) {
      const { secret } = await send('/api/calendar-feeds', { language });
      const keeper = await send(`/api/placements/${home.placementId}/calendar-feeds`, { language });
      const texts = {
        calendar: (await bytesOf(`/api/calendar/${secret}.ics`)).toString('utf8').replaceAll('\r\n ', ''),
        'calendar of the keeper': (await bytesOf(`/api/calendar/${keeper.secret}.ics`))
          .toString('utf8')
          .replaceAll('\r\n ', ''),
        pack: textOfPdf(await bytesOf(`/api/placements/${home.placementId}/pack.pdf?language=${language}`)),
        register: textOfPdf(await bytesOf(`/api/inspection.pdf?language=${language}`)),
      };
      expect(texts.calendar).toContain('BEGIN:VEVENT');
      expect(texts.pack.length).toBeGreaterThan(1500);
      expect(texts.register.length).toBeGreaterThan(500);
      for (const [name, text] of Object.entries(texts)) {
        const keys = keysIn(text);
        if (keys.length > 0) found[`${name}, ${language}`] = keys;
      }
    }
    expect(found).toEqual({});
  });

  it('not in the terminal', () => {
    const folder = mkdtempSync(join(tmpdir(), 'warmstead-keys-'));
    const file = join(folder, 'home.json');
    const enclosure = homeWithOddNames();
    writeFileSync(file, JSON.stringify(enclosure));
    const log = join(folder, 'log.csv');
    writeFileSync(log, logFileOf(enclosure, noonFourDaysAgoS()));
    const run = (...args: string[]): string => {
      try {
        return execFileSync(process.execPath, [new URL('../dist/cli/main.mjs', import.meta.url).pathname, ...args], {
          encoding: 'utf8',
          stdio: ['ignore', 'pipe', 'pipe'],
        });
      } catch (error) {
        // A home that fails ends with a code of its own, and says why on the same way.
        return String((error as { stdout?: string }).stdout ?? '');
      }
    };
    for (const lang of ['en', 'de']) {
      const plan = run('plan', file, '--standard', 'home-third', '--lang', lang);
      const proof = run('proof', log, '--enclosure', file, '--lang', lang);
      const simulated = run('simulate', file, '--lang', lang);
      const said = [plan, proof, simulated];
      expect(said.map((text) => text.length > 200)).toEqual([true, true, true]);
      expect(keysIn(said.join('\n'))).toEqual([]);
    }
  });
});
