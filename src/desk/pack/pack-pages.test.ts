import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Language, ownLanguages } from '../../shared/languages.ts';
import type { PaperUnits } from '../paper-units.ts';
import type { PackFigures } from './pack-job.ts';
import { mostPages, packPages, packPaper, packPdf } from './pack-pages.ts';
import type { PackSubject } from './pack-subject.ts';
import { cautionsFor } from './parts/danger-part.ts';
import { exampleFigures, exampleJob, exampleSubject } from './testing/pack-subjects.ts';
import { packBook } from './words/books.ts';

const metric = (language: Language): PaperUnits => ({ language, temperature: 'C', length: 'cm', mass: 'g' });
const us: PaperUnits = { language: 'en', temperature: 'F', length: 'in', mass: 'oz' };
const known = new Map<string, PackFigures>();
const figuresOf = (example: string): PackFigures => {
  const made = known.get(example) ?? exampleFigures(exampleJob(example));
  known.set(example, made);
  return made;
};
/** All that is said on the pages, drawings and their descriptions included, without places where a line may break. */
const said = (subject: PackSubject, figures: PackFigures, units: PaperUnits): string =>
  JSON.stringify(packPaper(subject, figures, units)).replace(/[\u200b\u2060]/g, '');
const lettersIn = (pdf: Buffer): number => pdf.length;

const run = 'Überlängenhöhlenschlangenzüchterei'.repeat(4).slice(0, 120);
const spaced = 'Sehr langer Name mit Zwischenräumen und Umlauten äöüß '.repeat(3).slice(0, 120);

function longWinded(figures: PackFigures, name: string): PackSubject {
  const plain = exampleSubject(figures);
  const entry = { ...plain.animal.entry, callName: name, supplierName: name, colourForm: name, originCountry: name };
  const papers = { chipNumber: name, otherMark: name, paperKind: name, paperNumber: name };
  const override = { what: { en: name, de: name }, why: `${name} ${name} ${name}`, by: name, on: '2026-01-14' };
  const value = {
    value: { low: 29, high: 33 },
    was: { low: 28, high: 32 },
    by: name,
    at: '2026-01-02T10:00:00Z',
    why: name,
  };
  return {
    ...plain,
    shopName: name,
    branchName: name,
    vetName: name,
    places: ['england', 'germany'],
    state: 'released',
    ended: { on: '2026-01-15', by: name },
    animal: { ...plain.animal, entry: { ...entry, ...papers } },
    overrides: Array.from({ length: 9 }, () => override),
    shopValues: Array.from({ length: 9 }, (_, i) => ({ ...value, path: `species.corn.all.key${i}C` })),
  };
}

describe('2 to 6 pages', () => {
  const examples = ['wood-1200', 'tub-mat-600', 'tall-wood', 'glass-mesh-900'];
  test.each(examples.flatMap((example) => ownLanguages.map((language) => [example, language] as const)))(
    '%s in %s',
    (example, language) => {
      const figures = figuresOf(example);
      for (const subject of [exampleSubject(figures), longWinded(figures, run), longWinded(figures, spaced)]) {
        const pdf = packPdf(subject, figures, metric(language));
        const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
        expect(pages).toBeGreaterThanOrEqual(2);
        expect(pages).toBeLessThanOrEqual(mostPages);
      }
    },
    60_000,
  );

  test.each(ownLanguages)('the usual pack keeps its drawings large and leaves rows to write in, in %s', (language) => {
    const figures = figuresOf('wood-1200');
    const { fit, pages } = packPages(exampleSubject(figures), figures, metric(language));
    expect(fit.tight).toBe(false);
    expect(fit.rows).toBeGreaterThanOrEqual(14);
    expect(pages.count).toBeGreaterThanOrEqual(2);
  });
});

test('the same input makes the same file', () => {
  const figures = figuresOf('wood-1200');
  const again = exampleFigures(exampleJob('wood-1200'));
  const first = packPdf(exampleSubject(figures), figures, metric('de'));
  expect(packPdf(exampleSubject(again), again, metric('de')).equals(first)).toBe(true);
  expect(lettersIn(first)).toBeGreaterThan(20_000);
});

const poppler = spawnSync('pdftotext', ['-v']).status === 0;
describe.skipIf(!poppler)('read back from the file', () => {
  /** Words with their places on the page [pt]. */
  const wordsOn = (pdf: Buffer) => {
    const folder = mkdtempSync(join(tmpdir(), 'pack-'));
    try {
      writeFileSync(join(folder, 'pack.pdf'), pdf);
      const { stdout } = spawnSync('pdftotext', ['-bbox', join(folder, 'pack.pdf'), '-'], {
        encoding: 'utf8',
        maxBuffer: 3e7,
      });
      return [...stdout.matchAll(/xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)].map(
        ([, x0, y0, x1, y1, word]) => ({ x0: Number(x0), y0: Number(y0), x1: Number(x1), y1: Number(y1), word: word! }),
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  };
  test.each([run, spaced])('no word leaves the page, and a name of 120 letters is there whole: %s', (name) => {
    const figures = figuresOf('wood-1200');
    const words = wordsOn(packPdf(longWinded(figures, name), figures, metric('de')));
    const margin = (16 / 25.4) * 72 - 2;
    for (const { x0, y0, x1, y1, word } of words) {
      expect([word, x0 >= margin, x1 <= 595.3 - margin, y0 >= 0, y1 <= 842]).toEqual([word, true, true, true, true]);
    }
    const flowing = words
      .map(({ word }) => word)
      .join('')
      .replace(/[\u200b\u2060\u00ad-]/g, '');
    expect(flowing).toContain(name.replace(/[ -]/g, ''));
  });
  test('what the drawing says is text', () => {
    const figures = figuresOf('wood-1200');
    const words = wordsOn(packPdf(exampleSubject(figures), figures, metric('en'))).map(({ word }) => word);
    for (const word of ['emitter', 'Probe,', 'Basking', '120']) expect(words).toContain(word);
  });
});

describe('what stands in it', () => {
  const figures = figuresOf('wood-1200');
  const plain = exampleSubject(figures);

  test('dial, probe height and expected readings are those of the plan', () => {
    const words = said(plain, figures, metric('en'));
    const expected = figures.plan.dial[0]!.expectBaskingC;
    expect(words).toContain('27\u00a0°C by day, 24\u00a0°C by night');
    expect(words).toContain('14\u00a0cm above the base');
    expect(words).toContain(
      `Expect ${expected.median.toFixed(1)} (${expected.low.toFixed(1)} to ${expected.high.toFixed(1)})`,
    );
  });

  test('hours of the power cut are those of the rehearsal on this box', () => {
    const hours = figures.rehearsal.powerCut.hoursToLine!;
    expect(said(plain, figures, metric('en'))).toContain(
      `after ${hours.median.toFixed(1)} (${hours.low.toFixed(1)} to ${hours.high.toFixed(1)}) h`,
    );
    const other = figuresOf('tall-wood');
    expect(other.rehearsal.powerCut.hoursToLine!.median).not.toBeCloseTo(hours.median, 1);
  });

  test('a second cut-out is said to stop a stuck thermostat only where the rehearsal says so', () => {
    const cutOutOf = (of: PackFigures) =>
      of.rehearsal.findings.find((one) => one.id === 'H2')!.guards.find((one) => one.guard === 'cut-out')!;
    expect(cutOutOf(figures).stops).toBe(false);
    expect(said(plain, figures, metric('en'))).toContain('would only put it off: after');
    const tub = figuresOf('tub-mat-600');
    expect(cutOutOf(tub).stops).toBe(true);
    expect(said(exampleSubject(tub), tub, metric('en'))).toContain(
      'A second cut-out with its own probe would stop it.',
    );
  });

  test.each(ownLanguages)('every caution of the pack stands in it, in %s', (language) => {
    const words = said(plain, figures, metric(language));
    const cautions = cautionsFor(plain);
    expect(cautions.length).toBeGreaterThan(12);
    for (const one of cautions) {
      const start = (packBook(language).danger.cautions[one.id] ?? one.say).slice(0, 40);
      expect(words).toContain(start);
    }
    if (language !== 'en') {
      for (const one of plain.facts.cautions.filter((c) => c.shownAt.includes('pack'))) {
        expect(packBook(language).danger.cautions[one.id], one.id).toBeDefined();
        expect(words).not.toContain(one.say.slice(0, 30));
      }
    }
  });

  test('in °F, inches and ounces nothing is left in metric', () => {
    const words = said(plain, figures, us);
    expect(words).toContain('81\u00a0°F by day');
    expect(words).not.toMatch(/°C|\d\s(?:cm|mm|m)\b|\d\sg\b/);
  });

  test('without a proof it says so; proven, it tells figures fitted to the readings, and what was read', () => {
    expect(said(plain, figures, metric('en'))).toContain('Not proven yet');
    const span = { low: 29.1, median: 30.2, high: 31.3 };
    const spreadC = { 'basking-surface': span, 'warm-air': span, 'cool-air': { low: 21, median: 22.2, high: 23 } };
    const moment = {
      roomC: 16.4,
      spreadC,
      coolRhPct: { low: 40, median: 45, high: 50 },
      powerW: span,
      flatOutShare: 0,
    };
    const ids = ['coldest-night', 'coldest-day', 'hottest-day', 'hottest-night'] as const;
    const answer = {
      verdict: 'proven',
      moments: ids.map((id) => ({ id, ...moment })),
      needs: [{ id: 'basking-surface', state: 'held', place: 'basking-surface', quantity: 'tempC', worst: 29.87 }],
      dial: {
        thermostatId: 'pulse',
        nowC: 27,
        adviceC: { low: 26.4, median: 26.9, high: 27.3 },
        aimC: 30.8,
        tooWeakShare: 0,
      },
    } as never;
    const proven = { ...plain, proof: { on: '2026-01-12', answer, current: true } };
    const words = said(proven, figures, metric('en'));
    expect(words).toContain('Proven by readings on 12 Jan 2026');
    expect(words).toContain('30.2 (29.1 to 31.3)');
    expect(words).toContain('29.9');
    expect(words).toContain('Your own readings put it at 26.4');
    expect(said({ ...proven, proof: { ...proven.proof, current: false } }, figures, metric('en'))).toContain(
      'no longer counts',
    );
  });

  test('an override is printed with who, when and why; beyond six the rest is counted', () => {
    const one = { what: { en: 'Slough', de: 'Häutung' }, why: 'Vet looked at it', by: 'Manager', on: '2026-01-14' };
    const released = { ...plain, state: 'released', ended: { on: '2026-01-15', by: 'Manager' } } as const;
    const words = said({ ...released, overrides: [one] }, figures, metric('de'));
    expect(words).toContain('Häutung: Vet looked at it (Manager, 14.01.2026)');
    expect(words).toContain('Abgegeben am 15.01.2026 von Manager.');
    const many = { ...released, overrides: Array.from({ length: 9 }, () => one) };
    expect(said(many, figures, metric('en'))).toContain('and 3 more in the record');
    expect(said(plain, figures, metric('en'))).toContain('this pack is a draft');
  });

  test('every heading that the law of the place asks for is named with the part where it stands', () => {
    const words = said(plain, figures, metric('en'));
    for (const one of plain.care.careHeadings.filter((heading) => heading.laws.england))
      expect(words).toContain(`${one.say.en}: `);
    expect(said({ ...plain, places: ['florida'] }, figures, metric('en'))).toContain('no list of headings was read');
  });

  test('a sign that whoever takes the animal must be told of stands in it', () => {
    const step = plain.care.examination.find(({ signs }) => signs.some((sign) => sign.disclose))!;
    const sign = step.signs.find((one) => one.disclose)!;
    const events = plain.animal.events.map((event) =>
      event.kind === 'examination'
        ? { ...event, body: { ...event.body, answers: { ...event.body.answers, [step.id]: [sign.id] } } }
        : event,
    );
    const words = said({ ...plain, animal: { ...plain.animal, events } }, figures, metric('en'));
    expect(words).toContain(`To be told of it: ${sign.say.en}`);
    expect(said(plain, figures, metric('en'))).not.toContain('To be told of it');
  });

  test('the next meal keeps its own rhythm, but not before the rest after the move', () => {
    // fed six days ago, every ten to fourteen: between 19 and 23 January; at rest until 20 January
    expect(said(plain, figures, metric('en'))).toContain('between 20 Jan 2026 and 23 Jan 2026');
    const fedToday = [
      ...plain.animal.events,
      { ...plain.animal.events.at(-2)!, id: 'late', on: '2026-01-15', at: '2026-01-15T09:00:00Z' },
    ];
    const later = { ...plain, animal: { ...plain.animal, events: fedToday as typeof plain.animal.events } };
    expect(said(later, figures, metric('en'))).toContain('between 25 Jan 2026 and 29 Jan 2026');
  });

  test('a shop value is told with what it replaced', () => {
    const value = {
      path: 'species.corn.all.baskingSurfaceC',
      value: { low: 29, high: 33 },
      was: { low: 28, high: 32 },
      by: 'Manager',
      at: '2026-01-02T10:00:00Z',
      why: 'our own animals',
    };
    expect(said({ ...plain, shopValues: [value] }, figures, metric('en'))).toContain(
      'Basking site: 29\u00a0°C to 33\u00a0°C in place of 28\u00a0°C to 32\u00a0°C; our own animals (Manager, 2 Jan 2026)',
    );
  });
});
