import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Enclosure } from '../../../physics/enclosure.ts';
import { dots, hatching, type Lettering } from './drawing.ts';
import { floorPlanDrawing } from './floor-plan.ts';
import { sectionDrawing } from './section.ts';
import { spreadAlong } from './spread-along.ts';

const folder = new URL('../../../../data/examples/', import.meta.url);
const examples = readdirSync(folder).map((name) => [
  name,
  JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Enclosure,
]) as [string, Enclosure][];
const length = (metres: number): string => `${(metres * 100).toFixed(1)} cm`;
const names = (enclosure: Enclosure) => enclosure.heaters.map(({ kind, powerW }) => `${kind} ${powerW} W`);

/** About what a line of the type takes [mm]; its letters are 0.42 as wide as high on average, measured on a page. */
function box({ xMm, yMm, text, sizePt, at }: Lettering) {
  const wide = text.length * sizePt * 0.42 * 0.353;
  const left = at === 'left' ? xMm : at === 'right' ? xMm - wide : xMm - wide / 2;
  const high = sizePt * 0.353 * 0.8;
  return { text, left, right: left + wide, top: yMm - high / 2, bottom: yMm + high / 2 };
}

describe.each(examples)('%s', (_, enclosure) => {
  const { lengthM } = enclosure.box;
  const tags = [0.2, 0.25, 0.8, 0.93].map((share, i) => ({
    xM: share * lengthM,
    name: `Place ${i}`,
    lines: ['day 30.9 (29.6 to 33.0) °C', 'night 24.3 °C', 'wanted 30 to 32 °C'],
  }));
  const words = { alt: 'front view', length, heaters: names(enclosure), probe: 'Probe' };
  const section = sectionDrawing(enclosure, tags, words, 56);
  const plan = floorPlanDrawing(
    enclosure,
    { today: 1.2, grown: 2.4 },
    { alt: 'plan', front: 'front', length, today: 'today', grown: 'grown' },
  );

  test.each([
    ['front view', section],
    ['floor plan', plan],
  ])('%s: shapes and letters stay on the drawing', (_name, drawing) => {
    const found = [...drawing.svg.matchAll(/ (x|y|x1|x2|y1|y2|cx|cy)="(-?[\d.]+)"/g)];
    expect(found.length).toBeGreaterThan(20);
    for (const [, axis, value] of found) {
      expect(Number(value)).toBeGreaterThanOrEqual(-0.5);
      expect(Number(value)).toBeLessThanOrEqual(axis!.includes('x') ? drawing.widthMm + 0.5 : drawing.heightMm + 0.5);
    }
    expect(drawing.svg).not.toMatch(/NaN|undefined|Infinity/);
    for (const one of drawing.lettering.map(box)) {
      expect([one.text, one.left >= -0.5, one.right <= drawing.widthMm + 0.5]).toEqual([one.text, true, true]);
      expect([one.text, one.top >= -0.5, one.bottom <= drawing.heightMm + 0.5]).toEqual([one.text, true, true]);
    }
  });

  test('no two letterings of the front view lie on each other', () => {
    const boxes = section.lettering.map(box);
    const clashes = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((b) => `${a.text} / ${b.text}`),
    );
    expect(clashes).toEqual([]);
  });

  test('every heater and probe is named, and the box is drawn to scale', () => {
    for (const name of names(enclosure)) expect(section.lettering.map(({ text }) => text)).toContain(name);
    expect(section.lettering.some(({ text }) => text === length(lengthM))).toBe(true);
    const inside = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(section.svg)!;
    expect(Number(inside[3]) / Number(inside[4])).toBeCloseTo(lengthM / enclosure.box.heightM, 1);
  });
});

test('labels are spread without touching, in their order, and stay where they are when there is room', () => {
  const [a, b, c] = spreadAlong([10, 12, 90], 20, 0, 100) as [number, number, number];
  expect(b - a).toBeGreaterThanOrEqual(20);
  expect([a, c]).toEqual([10, 90]);
  expect(spreadAlong([50], 20, 0, 100)).toEqual([50]);
});

test('hatching and dots stay inside their rectangle, and neighbours share one grid', () => {
  const lines = [
    ...hatching(3, 4, 10, 2, 1.5, {}).matchAll(/x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"/g),
  ];
  expect(lines.length).toBeGreaterThan(4);
  for (const [, ...at] of lines) {
    const [x1, y1, x2, y2] = at.map(Number) as [number, number, number, number];
    for (const x of [x1, x2]) expect(x >= 2.99 && x <= 13.01).toBe(true);
    for (const y of [y1, y2]) expect(y >= 3.99 && y <= 6.01).toBe(true);
    expect((x1 + y1) / 1.5).toBeCloseTo(Math.round((x1 + y1) / 1.5), 1);
  }
  const whole = dots(0, 0, 20, 6, 2, 0.3, '#000').match(/<circle/g)!.length;
  const parts = [dots(0, 0, 7, 6, 2, 0.3, '#000'), dots(7, 0, 13, 6, 2, 0.3, '#000')];
  expect(parts.reduce((sum, part) => sum + (part.match(/<circle/g)?.length ?? 0), 0)).toBe(whole);
});
