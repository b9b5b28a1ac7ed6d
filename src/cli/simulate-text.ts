// A simulation for a person at a terminal: temperatures at the places, watts, moisture, and a map for a day.
import { type DayAnswer, placeIds, type SteadyAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { Fault } from '../shared/fault.ts';
import type { Display } from './display.ts';
import { noteSaid } from './faults-text.ts';
import { gradientMapLines } from './gradient-map.ts';
import type { RunContext } from './run-context.ts';
import { padEnd, padStart, widthOf, wrapped } from './wrap.ts';

type Row = readonly [string, ...string[]];

export function steadyLines(
  answer: SteadyAnswer,
  roomRhPct: number,
  enclosure: Enclosure,
  show: Display,
  run: RunContext,
): string[] {
  const { messages, terminal } = run;
  const { simulate, places } = messages;
  const rows: Row[] = placeIds.flatMap((id): Row[] => {
    const value = answer.places[id];
    return value === null ? [] : [[places[id], show.temp(value)]];
  });
  answer.heaterW.forEach((watts, i) => {
    rows.push([enclosure.heaters[i]?.id ?? `${i}`, show.watts(watts)]);
  });
  rows.push([simulate.air, `${show.percent(answer.warmRhPct)}, ${show.percent(answer.coolRhPct)}`]);
  rows.push([simulate.dew, answer.dewOnGlass ? simulate.yes : simulate.no]);
  rows.push([simulate.airChange, show.number(answer.airChangePerH, 1)]);
  rows.push([simulate.balance, `${show.number(answer.balance.relative * 100, 3)} %`]);
  return [
    terminal.paint.bold(enclosure.name),
    simulate.steady(show.temp(answer.roomC), show.percent(roomRhPct)),
    ...tableLines(rows),
    ...noteLines(answer.notes, run),
  ];
}

export function dayLines(answer: DayAnswer, enclosure: Enclosure, show: Display, run: RunContext): string[] {
  const { messages, terminal } = run;
  const { simulate, places } = messages;
  const rows: Row[] = [['', simulate.lowest, simulate.highest]];
  for (const id of placeIds) {
    const values = answer.places[id];
    if (values !== null) rows.push([places[id], show.temp(Math.min(...values)), show.temp(Math.max(...values))]);
  }
  const most = (list: readonly number[]): [string, string] => [
    show.percent(Math.min(...list)),
    show.percent(Math.max(...list)),
  ];
  rows.push([simulate.air, ...most([...answer.warmRhPct, ...answer.coolRhPct])]);
  rows.push([simulate.heaters, show.watts(Math.min(...answer.heaterW)), show.watts(Math.max(...answer.heaterW))]);
  rows.push([simulate.energy, '', show.kWh(answer.kWhPerDay)]);
  rows.push([simulate.balance, '', `${show.number(answer.balance.relative * 100, 3)} %`]);
  return [
    terminal.paint.bold(enclosure.name),
    simulate.day(show.temp(answer.roomDay.lowC), show.temp(answer.roomDay.highC)),
    ...tableLines(rows),
    '',
    ...gradientMapLines(answer, enclosure, null, show, terminal, messages),
    ...noteLines(answer.notes, run),
  ];
}

function tableLines(rows: readonly Row[]): string[] {
  const columns = Math.max(...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, c) => Math.max(...rows.map((row) => widthOf(row[c] ?? ''))));
  return rows.map((row) => {
    const cells = row.map((text, c) => (c === 0 ? padEnd(text, widths[c] ?? 0) : padStart(text, widths[c] ?? 0)));
    return `  ${cells.join('   ')}`.trimEnd();
  });
}

function noteLines(notes: readonly Fault[], run: RunContext): string[] {
  if (notes.length === 0) return [];
  const { terminal, messages, language } = run;
  const lines = notes.flatMap((note) => wrapped(noteSaid(note, language), terminal.columns, '  - '));
  return ['', terminal.paint.bold(messages.plan.notes), ...lines];
}
