// What the first screen costs: the script it fetches (always held to its budget), and with WARMSTEAD_BENCH=screens how
// soon the largest paint is there and how long an answer to a touch takes, on a processor slowed down four times.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { measuredRound, type Round, slowDown } from './support/answer-times.ts';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { type RunningProgram, startProgram } from './support/program.ts';

/** Script of the first screen, compressed as sent [bytes]. */
const mostScriptBytes = 200_000;
/** Largest paint [ms] and answer to an interaction [ms] at a fourfold slow-down. */
const most = { paintMs: 1500, answerMs: 100 } as const;
const rounds = 5;
/** A machine that was disturbed for a while is asked once more. */
const attempts = 2;
/** What the piece of work takes on the machine that the budget was set for, while it does nothing else [ms]. */
const quietWorkMs = 20;

let program: RunningProgram;
let browser: Browser;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

async function freshPage(): Promise<{ page: Page; cdp: CDPSession; close: () => Promise<void> }> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: 'en-GB' });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  return { page, cdp, close: async () => await context.close() };
}

describeInBrowser('the first screen', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  it('fetches less script than its budget', async () => {
    const { page, cdp, close } = await freshPage();
    const scripts = new Map<string, { url: string; bytes: number }>();
    await cdp.send('Network.enable');
    cdp.on('Network.responseReceived', ({ requestId, response, type }) => {
      if (type === 'Script') scripts.set(requestId, { url: response.url, bytes: 0 });
    });
    cdp.on('Network.dataReceived', ({ requestId, encodedDataLength }) => {
      const script = scripts.get(requestId);
      if (script !== undefined) script.bytes += encodedDataLength;
    });
    await page.goto(program.url, { waitUntil: 'networkidle' });
    await page.getByRole('combobox', { name: 'Species' }).waitFor();
    const all = [...scripts.values()];
    expect(all.length).toBeGreaterThan(1);
    const bytes = all.reduce((sum, one) => sum + one.bytes, 0);
    expect(bytes, all.map((one) => `${one.bytes} ${one.url}`).join('\n')).toBeLessThan(mostScriptBytes);
    await close();
  });

  // Times are no unit test: they are measured when somebody asks (npm run bench:screens), and held to their budget where
  // that is asked for too (-- --budget, as the build does).
  const measured = process.env.WARMSTEAD_BENCH === 'screens' ? it : null;
  const held = process.env.WARMSTEAD_BUDGET === 'yes';
  measured?.(
    'paints and answers within its budget on a slow processor',
    async () => {
      let over: string[] = [];
      for (let attempt = 0; attempt < (held ? attempts : 1); attempt++) {
        const report = reportOf(await measuredRounds());
        console.log(report.lines.join('\n'));
        writeReport(report.lines);
        over = report.over;
        if (over.length === 0) break;
      }
      if (held) expect(over).toEqual([]);
    },
    900_000,
  );
});

async function measuredRounds(): Promise<readonly Round[]> {
  const all: Round[] = [];
  // The first one warms up the program and the files, and is not counted.
  await measuredRound(program.url, browser);
  for (let i = 0; i < rounds; i++) all.push(await measuredRound(program.url, browser));
  return all;
}

/** Medians, and which are over what is allowed on a machine that takes so long for the piece of work. */
function reportOf(all: readonly Round[]): { readonly lines: string[]; readonly over: string[] } {
  const workMs = median(all.flatMap((round) => round.workMs));
  const slower = Math.max(1, workMs / quietWorkMs);
  const over: string[] = [];
  const line = (name: string, ms: number, mostMs: number): string => {
    const say = `${name}: ${ms.toFixed(0)} ms; allowed ${mostMs} ms x ${slower.toFixed(2)}`;
    if (ms > mostMs * slower) over.push(say);
    return say;
  };
  const names = Object.keys(all[0]?.answersMs ?? {});
  return {
    lines: [
      `the piece of work: ${workMs.toFixed(1)} ms here, ${quietWorkMs} ms on the quiet machine of the budget`,
      `${all.length} loads, processor slowed ${slowDown} times, medians:`,
      line('largest paint', median(all.map((round) => round.paintMs)), most.paintMs),
      ...names.map((name) =>
        line(name, median(all.map((round) => round.answersMs[name] ?? Number.NaN)), most.answerMs),
      ),
    ],
    over,
  };
}

function writeReport(lines: readonly string[]): void {
  const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'dist');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'screens.txt'), `${lines.join('\n')}\n`);
}
