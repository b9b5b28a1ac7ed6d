// The built program beside facts of which two are not sound: it starts, works without them, and says so where it was
// started, to whoever asks for its state, and on the sheet of the lists. An animal of that species stays in the register.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const noBasking = 'species/corn.json: all.baskingSurfaceC';
const noSource = 'law.json: gb-under-16-ew';

let copy: string;
let program: RunningProgram;
let browser: Browser;

function copyOfProgram(): string {
  const folder = mkdtempSync(join(tmpdir(), 'warmstead-unsound-'));
  mkdirSync(join(folder, 'src', 'records'), { recursive: true });
  for (const part of ['package.json', 'dist', 'data', 'src/records/migrations'])
    cpSync(join(root, part), join(folder, part), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  return folder;
}

function spoil(file: string, change: (json: never) => void): void {
  const path = join(copy, 'data', file);
  const json = JSON.parse(readFileSync(path, 'utf8'));
  change(json as never);
  writeFileSync(path, JSON.stringify(json));
}

const read = async (path: string) => await (await fetch(`${program.url}${path}`)).json();

describeInBrowser('facts that are not sound', () => {
  beforeAll(async () => {
    copy = copyOfProgram();
    spoil('species/corn.json', (species: { all: { baskingSurfaceC: { low: unknown } } }) => {
      species.all.baskingSurfaceC.low = 'hot';
    });
    spoil('law.json', (rules: { id: string; source: string }[]) => {
      rules.find(({ id }) => id === 'gb-under-16-ew')!.source = 'none-such';
    });
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' }, 'owner', copy);
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
    rmSync(copy, { recursive: true, force: true });
  });

  it('are left out and told where it was started and to whoever asks', async () => {
    expect(program.output()).toContain(`${noBasking}: "low" is not a number. Found: hot.`);
    expect(program.output()).toContain(`${noSource}: The source is not in sources.json. Found: none-such.`);
    const { ok, leftOut } = (await read('/api/program')) as { ok: boolean; leftOut: { field: string; code: string }[] };
    expect(ok).toBe(true);
    expect(leftOut).toContainEqual(expect.objectContaining({ field: noBasking, code: 'DATA_FORM' }));
    expect(leftOut).toContainEqual(expect.objectContaining({ field: noSource, code: 'DATA_SOURCE' }));
    const { lists } = (await read('/api/lists')) as { lists: { law: { id: string }[] } };
    expect(lists.law.length).toBeGreaterThan(5);
    expect(lists.law.map(({ id }) => id)).not.toContain('gb-under-16-ew');
  });

  it('never judge an animal, which stays in the register', async () => {
    const { animals } = (await read('/api/animals')) as { animals: unknown[] };
    expect(JSON.stringify(animals)).toContain('"corn"');
    const enclosure = JSON.parse(readFileSync(join(root, 'data/examples/wood-1200.json'), 'utf8'));
    const answer = await fetch(`${program.url}/api/plan`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ enclosure, members: 4 }),
    });
    expect(answer.status).toBe(422);
    expect(((await answer.json()) as { faults: { got: string }[] }).faults).toMatchObject([{ got: 'corn' }]);
  });

  it.each([
    ['en-GB', 'places in the shipped data are not sound', 'The source is not in sources.json.'],
    ['de-DE', 'Stellen der mitgelieferten Daten sind nicht in Ordnung', 'Dieser Wert nennt keine bekannte Quelle.'],
  ])('stand on the sheet of the lists (%s)', async (locale, lead, why) => {
    const context = await browser.newContext({ locale, viewport: { width: 820, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${program.url}/lists`);
    const note = page.getByRole('status').filter({ hasText: lead });
    await note.waitFor({ timeout: 60_000 });
    const said = await note.getByRole('listitem').filter({ hasText: noSource }).textContent();
    expect(said).toContain(why);
    await context.close();
  });
});
