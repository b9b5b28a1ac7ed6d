// What stands on a printed sheet, read back from the PDF with the tools of a PDF reader: where each word is, where there
// is ink at all, and what of the screen came along that nobody can press on paper.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

const runs = (tool: string): boolean => {
  try {
    execFileSync(tool, ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

export const paperTools: boolean = runs('pdftotext') && runs('pdftoppm');

interface PaperPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly words: number;
  /** Nearest that ink comes to each edge: left, top, right, bottom. */
  readonly inkFromEdgeMm: readonly [number, number, number, number];
}

export interface Paper {
  readonly pages: readonly PaperPage[];
  /** Each word with what it lies outside of. */
  readonly wordsOutside: readonly string[];
  readonly text: string;
}

const ptPerMm = 72 / 25.4;
const dotsPerInch = 50;
const mmPerDot = 25.4 / dotsPerInch;

/** @param marginMm  what is left free all round */
export function readPaper(pdf: Buffer, marginMm: number): Paper {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    const boxes = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 });
    const pictures = pagesOfPgm(
      execFileSync('pdftoppm', ['-gray', '-r', String(dotsPerInch), file], { maxBuffer: 1 << 28 }),
    );
    const parts = boxes.split('<page ').slice(1);
    const pages = parts.map((part, index) => ({
      widthPt: attribute(part, 'width'),
      heightPt: attribute(part, 'height'),
      words: part.split('<word ').length - 1,
      inkFromEdgeMm: inkFromEdges(pictures[index]!),
    }));
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 26 });
    return { pages, wordsOutside: parts.flatMap((part, index) => outside(part, index + 1, marginMm)), text };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const attribute = (of: string, name: string): number => Number(new RegExp(`${name}="([\\d.-]+)"`).exec(of)?.[1]);

function outside(part: string, pageNumber: number, marginMm: number): string[] {
  // Letters reach a little over the box of their line.
  const free = (marginMm - 0.7) * ptPerMm;
  const right = attribute(part, 'width') - free;
  const bottom = attribute(part, 'height') - free;
  return part
    .split('<word ')
    .slice(1)
    .filter(
      (word) =>
        attribute(word, 'xMin') < free ||
        attribute(word, 'yMin') < free ||
        attribute(word, 'xMax') > right ||
        attribute(word, 'yMax') > bottom,
    )
    .map((word) => `page ${pageNumber}: ${/>([^<]*)</.exec(word)?.[1]}`);
}

interface Pgm {
  readonly width: number;
  readonly height: number;
  readonly grey: Buffer;
}

/** The pictures of all pages, one behind the other, as the tool writes them. */
function pagesOfPgm(all: Buffer): Pgm[] {
  const pages: Pgm[] = [];
  let at = 0;
  while (at < all.length) {
    const head = /^P5\s(\d+) (\d+)\s255\s/.exec(all.toString('latin1', at, at + 40));
    if (head === null) throw new Error('no picture of a page');
    const [width, height] = [Number(head[1]), Number(head[2])];
    const from = at + head[0].length;
    pages.push({ width, height, grey: all.subarray(from, from + width * height) });
    at = from + width * height;
  }
  return pages;
}

function inkFromEdges({ width, height, grey }: Pgm): PaperPage['inkFromEdgeMm'] {
  let [left, top, right, bottom] = [width, height, width, height];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if (grey[y * width + x]! > 235) continue;
      left = Math.min(left, x);
      top = Math.min(top, y);
      right = Math.min(right, width - 1 - x);
      bottom = Math.min(bottom, height - 1 - y);
    }
  const mm = (dots: number) => Math.round(dots * mmPerDot * 10) / 10;
  return [mm(left), mm(top), mm(right), mm(bottom)];
}

/** What would be printed although it can only be pressed, and words that their own box cuts off on paper. */
export async function wrongOnPaper(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: 'print' });
  // 210 mm less two margins of 14 mm, in CSS px.
  await page.setViewportSize({ width: Math.floor((182 * 96) / 25.4), height: 1000 });
  const found = await page.evaluate(() => {
    const shown = (one: HTMLElement) =>
      one.checkVisibility({ visibilityProperty: true }) &&
      one.closest('.visually-hidden, [aria-hidden="true"]') === null &&
      one.getBoundingClientRect().width > 1;
    const say = (one: HTMLElement) =>
      `${one.tagName} .${one.className} "${(one.textContent ?? '').trim().slice(0, 40)}"`;
    const all = (what: string) => [...document.querySelectorAll<HTMLElement>(what)].filter(shown);
    const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    const cut = all('h1, h2, h3, p, li, td, th, dd, dt, summary, figcaption').filter((one) => {
      const hides = getComputedStyle(one).overflowX;
      return (hides === 'hidden' || hides === 'clip' || hides === 'auto') && one.scrollWidth > one.clientWidth + 1;
    });
    return [
      ...all('button, select, input:not([type=hidden]), textarea, [role=button], a.button, .sheet-links').map(
        (one) => `to press: ${say(one)}`,
      ),
      ...cut.map((one) => `cut off: ${say(one)}`),
      ...(over > 0 ? [`${over} px wider than the paper`] : []),
    ];
  });
  await page.emulateMedia({ media: null });
  return found;
}
