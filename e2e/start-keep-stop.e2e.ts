// The program's own life: a first start makes the demonstration shop, what the desk puts down is there after a stop
// and after a crash, a second start on the same data shares them, and stopping leaves nothing running.
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { postmasterFacts } from '../src/records/embedded/connection.ts';
import { installedBinaries } from '../src/records/embedded/engine-binaries.ts';
import { databasePlace } from '../src/records/embedded/place.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { sameOwner, signInOwner } from './support/owner.ts';
import { type AsWhom, type RunningProgram, startProgram } from './support/program.ts';

let data: string;
beforeAll(() => {
  data = mkdtempSync(join(tmpdir(), 'warmstead-life-'));
});
afterAll(() => {
  rmSync(cluster(), { recursive: true, force: true });
  rmSync(data, { recursive: true, force: true });
});

const start = async (as?: AsWhom): Promise<RunningProgram> =>
  await startProgram({ DATABASE_URL: '', WARMSTEAD_DATA: data }, as);

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

test('a first start has the demonstration; what is put down outlives a stop, and a stop leaves nothing running', async () => {
  const first = await start();
  const demonstration = await titles(first);
  expect(demonstration).toHaveLength(5);
  await openEnquiry(first, 'kept over a stop');
  expect(await first.stop()).toBe(0);
  expect(postmasterFacts(cluster())).toBeNull();
  const second = await start();
  expect(await titles(second)).toEqual(['kept over a stop', ...demonstration]);
  expect(await second.stop()).toBe(0);
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
  const [one, two] = await Promise.all([start('stranger'), start('stranger')]);
  // Each start makes the passwords of the demonstration anew: those of the later one hold.
  const owner = await signInOwner(one.url, two.output()).catch(async () => await signInOwner(one.url, one.output()));
  sameOwner(two.url, owner);
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
