// The program's own life: a first start is a real shop that waits for its owner, what the desk puts down is there after a
// stop and after a crash, a second start on the same data shares them, and stopping leaves nothing running. The
// demonstration is asked for, and never put among a shop's own records.
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { postmasterFacts } from '../src/records/embedded/connection.ts';
import { installedBinaries } from '../src/records/embedded/engine-binaries.ts';
import { databasePlace } from '../src/records/embedded/place.ts';
import { freshDatabaseUrl } from '../src/records/testing/fresh-database.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

let data: string;
beforeAll(() => {
  data = mkdtempSync(join(tmpdir(), 'warmstead-life-'));
});
afterAll(() => {
  rmSync(cluster(), { recursive: true, force: true });
  rmSync(data, { recursive: true, force: true });
});

const start = async (): Promise<RunningProgram> => await startProgram({ DATABASE_URL: '', WARMSTEAD_DATA: data });

/** Where the records of this folder lie: in it, or elsewhere when its folder is closed to the database's account. */
function cluster(): string {
  const installed = installedBinaries();
  if (!installed.ok) throw new Error('no database programs');
  const place = databasePlace(data, installed.value);
  if (!place.ok) throw new Error(place.faults[0]?.say);
  return place.value.cluster;
}

async function titles(program: RunningProgram): Promise<string[]> {
  const answer = (await (await fetch(`${program.url}/api/enquiries`)).json()) as { enquiries: { title: string }[] };
  return answer.enquiries.map((row) => row.title);
}

async function openEnquiry(program: RunningProgram, label: string): Promise<void> {
  const body = JSON.stringify({ document: { answers: { label } } });
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${program.url}/api/enquiries`, { method: 'POST', headers, body });
  expect(answer.status).toBe(201);
}

test('a first start is a shop of one’s own; what is put down outlives a stop, and a stop leaves nothing running', async () => {
  const first = await start();
  expect(first.output()).toContain('Set-up code: ');
  expect(first.output()).not.toContain('demonstration');
  expect(await titles(first)).toEqual([]);
  await openEnquiry(first, 'kept over a stop');
  expect(await first.stop()).toBe(0);
  expect(postmasterFacts(cluster())).toBeNull();
  const second = await start();
  expect(second.output()).not.toContain('Set-up code: ');
  expect(await titles(second)).toEqual(['kept over a stop']);
  expect(await second.stop()).toBe(0);
});

test('the demonstration is not put among records of a shop', async () => {
  const asked = startProgram({ DATABASE_URL: '', WARMSTEAD_DATA: data, WARMSTEAD_DEMO: 'yes' });
  await expect(asked).rejects.toThrow(/ended with 1 .*SETTING_DEMO_RECORDS/s);
  expect(postmasterFacts(cluster())).toBeNull();
});

test('the demonstration is asked for once; its records say afterwards what they are', async () => {
  const DATABASE_URL = await freshDatabaseUrl();
  const asked = await startProgram({ DATABASE_URL, WARMSTEAD_DEMO: 'yes' });
  expect(await titles(asked)).toHaveLength(5);
  expect(asked.output()).not.toContain('Your own shop begins');
  expect(await asked.stop()).toBe(0);
  const later = await startProgram({ DATABASE_URL });
  expect(later.output()).toContain('These records are the demonstration’s. Your own shop begins in new ones');
  expect(await titles(later)).toHaveLength(5);
  expect(await later.stop()).toBe(0);
});

test('what is put down outlives a crash', async () => {
  const first = await start();
  await openEnquiry(first, 'kept over a crash');
  await first.crash();
  const second = await start();
  expect(await titles(second)).toContain('kept over a crash');
  expect(await second.stop()).toBe(0);
  expect(postmasterFacts(cluster())).toBeNull();
});

test('two programs share one set of records; the first to stop leaves the other at work', async () => {
  const [one, two] = await Promise.all([start(), start()]);
  await openEnquiry(one, 'seen from both');
  expect(await titles(two)).toContain('seen from both');
  expect(await one.stop()).toBe(0);
  expect(await titles(two)).toContain('seen from both');
  expect(await two.stop()).toBe(0);
  expect(existsSync(join(cluster(), 'postmaster.pid'))).toBe(false);
});

describeInBrowser('the pages in a real browser', () => {
  test('open without an error and without breaking their own policy', async () => {
    const program = await startProgram();
    const browser = await launchBrowser();
    try {
      const page = await browser.newPage();
      const wrong: string[] = [];
      page.on('console', (message) => message.type() === 'error' && wrong.push(message.text()));
      page.on('pageerror', (error) => wrong.push(error.message));
      await page.goto(program.url, { waitUntil: 'networkidle' });
      await expect.poll(async () => await page.locator('h1').count(), { timeout: 10_000 }).toBeGreaterThan(0);
      expect(wrong).toEqual([]);
    } finally {
      await browser.close();
      await program.stop();
    }
  });
});
