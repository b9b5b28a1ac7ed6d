// The sheets that are printed, as PDF pictures: A4, all ink and words inside the margins, nothing on paper that can only be
// pressed, nothing cut off, and no more pages than expected; from the browser, and as the program itself writes them.
// With WARMSTEAD_SHOTS the papers are kept.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeInBrowser, launchBrowser } from './support/browser.ts';
import { paperTools, readPaper, wrongOnPaper } from './support/paper.ts';
import { type RunningProgram, startProgram } from './support/program.ts';
import { findSheets, openSheet, type Sheet } from './support/sheets.ts';

let program: RunningProgram;
let browser: Browser;
let sheets: readonly Sheet[];
/** What the program's own pages leave free all round, their foot included. */
const footMm = 8;

/** Sheets a person prints from the browser, with a word each must carry and the most pages of the demonstration's. */
const printed: readonly { readonly name: string; readonly says: RegExp; readonly mostPages: number }[] = [
  { name: 'plan', says: /What holds \(\d+\)[\s\S]*Cautions/, mostPages: 3 },
  {
    name: 'placement',
    says: /The decision\s+Shut: requirements that do not stand: \d[\s\S]*The home \d of \d stand/,
    mostPages: 5,
  },
  { name: 'one-species', says: /Royal \(ball\) python[\s\S]*looked at/, mostPages: 8 },
  { name: 'lists', says: /Law, kit and rules of the shop/, mostPages: 3 },
  { name: 'own-figures', says: /How our animals fared/, mostPages: 2 },
  { name: 'register', says: /Register, for the inspector[\s\S]*Juniper/, mostPages: 3 },
  { name: 'animal', says: /All that ever happened/, mostPages: 4 },
];

const keep = (name: string, pdf: Buffer): void => {
  const folder = process.env.WARMSTEAD_SHOTS;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}.pdf`), pdf);
};

function wrongWith(pdf: Buffer, marginMm: number, mostPages: number, says: RegExp): string[] {
  const paper = readPaper(pdf, marginMm);
  const a4 = paper.pages.every((one) => Math.abs(one.widthPt - 595.3) < 1 && Math.abs(one.heightPt - 841.9) < 1);
  return [
    ...(a4 ? [] : ['not A4']),
    ...(paper.pages.length > mostPages ? [`${paper.pages.length} pages`] : []),
    ...(says.test(paper.text) ? [] : [`does not say ${says}`]),
    ...paper.wordsOutside.map((word) => `outside the margin: ${word}`),
    ...paper.pages.flatMap((one, index) => {
      if (one.words === 0) return [`page ${index + 1} has no word`];
      return Math.min(...one.inkFromEdgeMm) < marginMm - 0.7
        ? [`page ${index + 1}: ink ${one.inkFromEdgeMm.join(', ')} mm from the edges`]
        : [];
    }),
  ];
}

const suite = paperTools
  ? describeInBrowser
  : (name: string, body: () => void) => describe.skip(`${name} (needs poppler-utils)`, body);

suite('on paper', () => {
  beforeAll(async () => {
    program = await startProgram({ WARMSTEAD_DEMO: 'yes' });
    browser = await launchBrowser();
    sheets = await findSheets(program);
  });
  afterAll(async () => {
    await browser?.close();
    await program?.stop();
  });

  for (const locale of ['en-GB', 'de-DE'])
    it(`prints each sheet whole, in ${locale}`, async () => {
      const wrong: Record<string, string[]> = {};
      for (const { name, says, mostPages } of printed) {
        const sheet = sheets.find((one) => one.name === name)!;
        const page = await openSheet(browser, program, sheet, 1280, { locale });
        const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
        keep(`${name}-${locale.slice(0, 2)}`, pdf);
        const found = [
          ...wrongWith(pdf, 14, mostPages, locale === 'en-GB' ? says : /\p{L}/u),
          ...(await wrongOnPaper(page)),
        ];
        if (found.length > 0) wrong[name] = found;
        await page.close();
      }
      expect(wrong).toEqual({});
    }, 300_000);

  it('hands out registers and own values as pages of its own', async () => {
    const wrong: Record<string, string[]> = {};
    for (const [path, says] of [
      ['inspection.pdf?search=&language=en', /Juniper/],
      ['inspection.pdf?search=&language=de', /Juniper/],
      ['shop-values.pdf?language=en', /Where this branch goes by another value/],
      ['shop-values.pdf?language=de', /einem anderen Wert/],
    ] as const) {
      const pdf = Buffer.from(await (await fetch(`${program.url}/api/${path}`)).arrayBuffer());
      keep(path.replace(/\.pdf.*=/, '-own-'), pdf);
      // Their foot stands below the text, inside the margin.
      const found = wrongWith(pdf, footMm, 10, says);
      if (found.length > 0) wrong[path] = found;
    }
    expect(wrong).toEqual({});
  }, 120_000);
});
