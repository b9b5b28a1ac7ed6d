// The signature picture in a terminal: position along the box across, the 24 hours down, temperature of the floor.
// Colour: half blocks, two hours a line. Without colour: one character a cell, one hour a line.
// Both carry the finding in words above, the heaters' watts and the room beside.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { DayAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { Display } from './display.ts';
import { type Cell, type CellKind, type FloorMap, floorMap, troublesOf } from './floor-map.ts';
import type { Messages } from './messages/en.ts';
import type { Terminal } from './terminal.ts';
import { padEnd, padStart, wrapped } from './wrap.ts';

/** Colours of the 256-colour table: slate blue, paper, pale straw for the basking range, clay. */
const colours: Readonly<Record<CellKind, number>> = {
  cold2: 24,
  cold1: 110,
  wanted: 230,
  basking: 222,
  warm1: 173,
  warm2: 124,
};
const signs: Readonly<Record<CellKind, string>> = {
  cold2: '=',
  cold1: '-',
  wanted: '.',
  basking: 'o',
  warm1: '+',
  warm2: '#',
};
const kinds = Object.keys(colours) as CellKind[];
/** Signs and greys of a map without an animal, coolest first. */
const plainScale = '0123456789';
const greys = [17, 24, 31, 67, 110, 152, 230, 222, 215, 173];

const hourWidth = 4;
const besideWidth = 18;

export function gradientMapLines(
  day: DayAnswer,
  enclosure: Enclosure,
  climate: ClimateNeeds | null,
  show: Display,
  terminal: Terminal,
  messages: Messages,
): string[] {
  const width = Math.max(24, Math.min(60, terminal.columns - hourWidth - besideWidth));
  const { lengthM } = enclosure.box;
  const map = floorMap(day, lengthM, enclosure.day, climate, width);
  const temps = map.rows.flat().map((cell) => cell.tempC);
  const scale = { lowC: Math.min(...temps), highC: Math.max(...temps) };
  const lines = climate === null ? [] : wrapped(findingOf(map, day.warmEnd, messages), terminal.columns);
  const { warmEnd, coolEnd, hour, heater, room } = messages.map;
  const [left, right] = day.warmEnd === 'left' ? [warmEnd, coolEnd] : [coolEnd, warmEnd];
  lines.push(
    padEnd(padEnd(hour, hourWidth + 1) + left, hourWidth + width - right.length + 1) +
      right +
      padStart(heater, 8) +
      padStart(room, 9),
  );
  const step = terminal.colour ? 2 : 1;
  for (let h = 0; h < map.rows.length; h += step) {
    const upper = map.rows[h] ?? [];
    const body = terminal.colour ? halfBlocks(upper, map.rows[h + 1] ?? upper, scale) : characters(upper, scale);
    lines.push(`${padEnd(String(h).padStart(2, '0'), hourWidth)} ${body}${besideOf(map, h, step, show)}`);
  }
  const ruler = padEnd('0', width - show.length(lengthM).length) + show.length(lengthM);
  lines.push(' '.repeat(hourWidth + 1) + ruler, ...legendLines(climate !== null, scale, show, terminal, messages));
  return lines;
}

function besideOf(map: FloorMap, hour: number, step: number, show: Display): string {
  const mean = (list: readonly number[]): number => list.slice(hour, hour + step).reduce((a, b) => a + b, 0) / step;
  return padStart(show.watts(mean(map.heaterW)), 8) + padStart(show.temp(mean(map.roomC)), 9);
}

function findingOf(map: FloorMap, warmEnd: 'left' | 'right', messages: Messages): string {
  const { fine, trouble, fromTo, allDay } = messages.map;
  const clock = (h: number): string => `${String(h % 24).padStart(2, '0')}:00`;
  const found = troublesOf(map, warmEnd).map(({ kind, part, fromH, hours }) =>
    trouble(kind, part, hours === 24 ? allDay : fromTo(clock(fromH), clock(fromH + hours))),
  );
  const anywhere = map.rows.flat().some((cell) => cell.kind !== 'wanted' && cell.kind !== 'basking');
  return found.length > 0 ? found.join(' ') : anywhere ? messages.map.mostly : fine;
}

interface Scale {
  readonly lowC: number;
  readonly highC: number;
}

const stepOf = (tempC: number, { lowC, highC }: Scale): number =>
  Math.max(0, Math.min(9, Math.floor((10 * (tempC - lowC)) / Math.max(highC - lowC, 0.1))));

const colourOf = (cell: Cell | undefined, scale: Scale): number =>
  cell === undefined ? 0 : cell.kind === null ? (greys[stepOf(cell.tempC, scale)] ?? 0) : colours[cell.kind];

function characters(row: readonly Cell[], scale: Scale): string {
  return row.map((cell) => (cell.kind === null ? plainScale[stepOf(cell.tempC, scale)] : signs[cell.kind])).join('');
}

/** Two hours in one line: the upper half of each block is the first, the lower half the second. */
function halfBlocks(upper: readonly Cell[], lower: readonly Cell[], scale: Scale): string {
  let before = '';
  const cells = upper.map((cell, c) => {
    const code = `\u001b[38;5;${colourOf(cell, scale)};48;5;${colourOf(lower[c], scale)}m`;
    const block = code === before ? '\u2580' : `${code}\u2580`;
    before = code;
    return block;
  });
  return `${cells.join('')}\u001b[0m`;
}

function legendLines(
  withAnimal: boolean,
  scale: Scale,
  show: Display,
  terminal: Terminal,
  messages: Messages,
): string[] {
  const sample = (colour: number): string => `\u001b[48;5;${colour}m  \u001b[0m`;
  if (!withAnimal) {
    const steps = terminal.colour ? greys.map(sample).join('') : `${plainScale[0]}..${plainScale.at(-1)}`;
    return [`     ${steps} ${messages.map.ownScale(show.temp(scale.lowC), show.temp(scale.highC))}`];
  }
  const parts = kinds.map((kind) => {
    const sign = terminal.colour ? sample(colours[kind]) : signs[kind];
    return `${sign} ${messages.map.legend[kind]}`;
  });
  return [`     ${parts.slice(0, 3).join('   ')}`, `     ${parts.slice(3).join('   ')}`];
}
