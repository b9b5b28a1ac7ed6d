// The floor through a day: from end to end across, the hours down; hatched where it is too cold, dotted where too warm, so
// that it reads in black and white. At its right edge the heater's work.
import type { DayAnswer } from '../../../physics/answer.ts';
import { type FloorLevels, floorSlackK } from '../../../planning/floor-levels.ts';
import {
  clay,
  claySoft,
  type Drawing,
  dots,
  hatching,
  ink,
  letter,
  line,
  rect,
  slate,
  slateSoft,
  svgOf,
} from './drawing.ts';

export interface DayMapWords {
  readonly alt: string;
  readonly left: string;
  readonly right: string;
  readonly heat: string;
  readonly clock: (hour: number) => string;
}

const widthMm = 86;
const leftMm = 15;
const mapMm = 58;
const topMm = 5;
const strongK = 3;

export function dayMapDrawing(levels: FloorLevels, day: DayAnswer, words: DayMapWords, heightOfMapMm: number): Drawing {
  const [cw, ch] = [mapMm / levels.columns, heightOfMapMm / levels.rows];
  const shapes: string[] = [];
  for (let r = 0; r < levels.rows; r++) shapes.push(...rowShapes(levels, r, cw, ch));
  const strip = leftMm + mapMm + 2;
  const most = Math.max(1e-9, ...day.heaterW);
  const barMm = 9;
  for (let hour = 0; hour < 24; hour++) {
    const share = meanOver(day, hour) / most;
    shapes.push(
      rect(strip, topMm + (hour / 24) * heightOfMapMm, barMm * share, heightOfMapMm / 24, {
        fill: '#b9b2a4',
        widthMm: 0.1,
      }),
    );
  }
  shapes.push(
    rect(leftMm, topMm, mapMm, heightOfMapMm, { widthMm: 0.35 }),
    line(strip, topMm, strip, topMm + heightOfMapMm),
  );
  const hours = [0, 6, 12, 18, 24];
  for (const at of hours) {
    const y = topMm + (at / 24) * heightOfMapMm;
    shapes.push(line(leftMm - 1.5, y, leftMm, y, { stroke: ink }));
  }
  const bottom = topMm + heightOfMapMm;
  const lettering = [
    ...hours.map((at) => letter(leftMm - 2, topMm + (at / 24) * heightOfMapMm, words.clock(at % 24), 'right', 9)),
    letter(leftMm, bottom + 3, words.left, 'left', 9),
    letter(leftMm + mapMm, bottom + 3, words.right, 'right', 9),
    letter(strip, 2.6, words.heat, 'left', 9),
  ];
  return { svg: svgOf(widthMm, bottom + 5.5, shapes), widthMm, heightMm: bottom + 5.5, lettering, alt: words.alt };
}

/** Runs of one kind in a row, each tinted and covered with its hatching. */
function rowShapes({ columns, outsideK }: FloorLevels, row: number, cw: number, ch: number): string[] {
  const kindAt = (c: number): number => {
    const k = outsideK[row * columns + c]!;
    return Math.abs(k) <= floorSlackK ? 0 : Math.sign(k) * (Math.abs(k) > strongK ? 2 : 1);
  };
  const found: string[] = [];
  let start = 0;
  for (let c = 1; c <= columns; c++) {
    const kind = kindAt(start);
    if (c < columns && kindAt(c) === kind) continue;
    const [x, y, w] = [leftMm + start * cw, topMm + row * ch, (c - start) * cw];
    if (kind < 0)
      found.push(
        rect(x, y, w, ch, { fill: slateSoft, stroke: 'none' }),
        hatching(x, y, w, ch, kind === -2 ? 1 : 1.8, { stroke: slate, widthMm: 0.22 }),
      );
    if (kind > 0)
      found.push(
        rect(x, y, w, ch, { fill: claySoft, stroke: 'none' }),
        dots(x, y, w, ch, kind === 2 ? 1.1 : 1.8, 0.32, clay),
      );
    start = c;
  }
  return found;
}

function meanOver(day: DayAnswer, hour: number): number {
  const within = day.heaterW.filter((_, i) => day.hours[i]! > hour && day.hours[i]! <= hour + 1);
  return within.length === 0 ? 0 : within.reduce((sum, w) => sum + w, 0) / within.length;
}
