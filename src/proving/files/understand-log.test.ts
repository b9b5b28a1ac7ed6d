// Every layout that shops meet: each file is cut by the same tokenizer the program uses and must give the right readings.
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { type Delimiter, delimiterOf } from './delimiter.ts';
import { dayNumber, wallText } from './stamp.ts';
import { understandLog } from './understand-log.ts';
import type { LogHints, UnderstoodLog } from './understood.ts';

const cut = (text: string): { rows: string[][]; delimiter: Delimiter } => {
  const delimiter = delimiterOf(text);
  return { rows: Papa.parse<string[]>(text, { delimiter }).data, delimiter };
};

function read(text: string, hints: LogHints = {}): UnderstoodLog {
  const { rows, delimiter } = cut(text);
  const found = understandLog(rows, { encoding: 'utf-8', delimiter }, hints);
  if (!found.ok) throw new Error(JSON.stringify(found.faults));
  return found.value;
}
const faultsOf = (text: string): string[] => {
  const { rows, delimiter } = cut(text);
  const found = understandLog(rows, { encoding: 'utf-8', delimiter });
  return found.ok ? [] : found.faults.map((f) => f.code);
};
const values = (u: UnderstoodLog, i: number) => u.log.channels[i]!.values;
const quantities = (u: UnderstoodLog) => u.log.channels.map((c) => c.quantity);
const first = (u: UnderstoodLog) => wallText(u.log.timesS[0]!);
const ids = (u: UnderstoodLog) => u.findings.map((f) => f.id);
const asked = (u: UnderstoodLog) => u.questions.map((q) => q.id);

/** Lines every ten minutes from a start; `line` writes one. */
const lines = (n: number, line: (i: number, clock: string) => string): string =>
  Array.from({ length: n }, (_, i) =>
    line(i, `${String(8 + Math.floor(i / 6)).padStart(2, '0')}:${String((i % 6) * 10).padStart(2, '0')}`),
  ).join('\n');

describe('layouts', () => {
  it('no heading, states between, day first, AM and PM', () => {
    const u = read(
      '24-11-2026,11:40:00 AM,P,+021.50,L,+055.0\n24-11-2026,11:50:00 AM,L,+021.75,L,+055.5\n24-11-2026,12:00:00 PM,L,+022.00,A,+056.0\n',
    );
    expect(quantities(u)).toEqual(['tempC', 'rhPct']);
    expect(values(u, 0)).toEqual([21.5, 21.75, 22]);
    expect([first(u), u.dateOrder, u.intervalS]).toEqual(['2026-11-24 11:40', 'dmy', 600]);
  });
  it('quoted heading with a counter that skips', () => {
    const u = read(
      `"Count","Time","Celsius(C)","Humidity(%RH)"\n${[1, 2, 3, 4, 7, 8, 9, 10].map((n) => `"${n}","25/11/2026 ${String(10 + n).padStart(2, '0')}:00:00","2${n % 10}.5","50.0"`).join('\n')}`,
    );
    expect(u.findings.find((f) => f.id === 'missing-rows')?.count).toBe(2);
    expect(values(u, 0)[0]).toBe(21.5);
    expect(u.log.channels).toHaveLength(2);
  });
  it('four lines before the data, heading among them', () => {
    const u = read(
      `Logger export\nName: back room\nDate/Time,Warm end °C,Cool end °C\nInterval 10 min\n${lines(8, (i, c) => `2026-11-24 ${c},${30 + i / 10},24.${i}`)}`,
    );
    expect([u.headingRow, u.preambleRows]).toEqual([3, 2]);
    expect(u.log.channels.map((c) => c.place)).toEqual(['warm-air', 'cool-air']);
  });
  it('semicolons and decimal commas', () => {
    const u = read(`Datum;Zeit;Temperatur Raum °C;Feuchte %\n${lines(8, (i, c) => `24.11.2026;${c};21,${i};5${i},0`)}`);
    expect([u.delimiter, u.decimal]).toEqual([';', ',']);
    expect(values(u, 0)[3]).toBeCloseTo(21.3, 9);
    expect(u.log.channels[0]!.place).toBe('room');
  });
  it('name in each row, serial only in the first, dew point not taken for a reading', () => {
    const u = read(
      `Hide 1,Time,Celsius(°C),Humidity(%rh),Dew Point(°C),Serial\n${lines(6, (i, c) => `${i + 1},2026-11-24 ${c}:00,27.${i},60.5,18.${i},${i === 0 ? '0123456' : ''}`)}`,
    );
    expect(quantities(u)).toEqual(['tempC', 'rhPct']);
    expect(u.columns.find((c) => c.subject === 'dew')).toBeDefined();
  });
  it('title row, zone in the heading, event text at the end', () => {
    const u = read(
      `"Plot Title: vivarium"\n"#","Date Time (GMT+01:00)","Temp, °C (LGR S/N: 1)","RH, % (LGR S/N: 1)","Coupler Attached"\n${lines(6, (i, c) => `${i + 1},11/24/26 ${c}:00 AM,2${i}.123,55.1,${i === 2 ? 'Logged' : ''}`)}`,
    );
    expect([u.dateOrder, u.clock.offsetMin]).toEqual(['mdy', 60]);
    expect(values(u, 0)[1]).toBeCloseTo(21.123, 9);
    expect(asked(u)).not.toContain('zone');
  });
  it('°F in the heading becomes °C', () => {
    const u = read(`Time,Temperature(°F)\n${lines(4, (_, c) => `2026-11-24 ${c},86`)}`);
    expect(values(u, 0)[0]).toBeCloseTo(30, 9);
  });
  it('summary rows at the end are set aside and counted', () => {
    const u = read(
      `Time;Temp °C\n${lines(6, (i, c) => `2026-11-24 ${c};25.${i}`)}\n\nMax;26.1\nMin;25.0\nAverage;25.4\n`,
    );
    expect(u.rejectedByReason.summary).toBe(3);
    expect(u.log.timesS).toHaveLength(6);
  });
  it('universal time with Z asks for the home, and moves when told', () => {
    const text = `time,temp_c\n2026-11-24T10:00:00Z,25.1\n2026-11-24T10:05:00Z,25.2\n`;
    expect(asked(read(text))).toContain('zone');
    expect(first(read(text, { homeOffsetMin: 60 }))).toBe('2026-11-24 11:00');
    expect(asked(read(text, { homeOffsetMin: 60 }))).not.toContain('zone');
  });
  it.each([
    ['seconds', 1_795_860_000, 300],
    ['milliseconds', 1_795_860_000_000, 300_000],
  ])('%s since 1970', (_, start, step) => {
    const u = read(`epoch,temperature °C\n${[0, 1, 2, 3].map((i) => `${start + i * step},2${i}.0`).join('\n')}`);
    expect([u.dateOrder, u.intervalS, u.log.timesS[0]]).toEqual(['numbers', 300, 1_795_860_000]);
  });
  it('spreadsheet day numbers', () => {
    const u = read(`when,T °C\n46350.5,21\n46350.75,22\n46351,23\n`);
    expect([first(u), u.intervalS]).toEqual(['2026-11-24 12:00', 21600]);
  });
  it('two sensors side by side', () => {
    const u = read(`Time,T1,T2,H1\n${lines(6, (i, c) => `2026-11-24 ${c},30.${i},24.${i},5${i}`)}`);
    expect(quantities(u)).toEqual(['tempC', 'tempC', 'rhPct']);
    expect(asked(u).filter((q) => q === 'place')).toHaveLength(3);
  });
  it('one reading a row, the sensor named in it', () => {
    const u = read(
      `timestamp,sensor,quantity,value\n${lines(6, (i, c) => `2026-11-24 ${c},basking,temperature,3${i}.0\n2026-11-24 ${c},cool end,temperature,24.${i}\n2026-11-24 ${c},cool end,humidity,55`)}`,
    );
    expect(u.log.channels.map((c) => [c.place, c.quantity])).toEqual([
      ['basking-surface', 'tempC'],
      ['cool-air', 'tempC'],
      ['cool-air', 'rhPct'],
    ]);
    expect(values(u, 0)).toEqual([30, 31, 32, 33, 34, 35]);
  });
  it('tabs, months by name', () => {
    const u = read(`Date\tTemp °C\n${lines(4, (i, c) => `24 Nov 2026 ${c}\t2${i}.5`)}`);
    expect([u.delimiter, first(u), values(u, 0)[2]]).toEqual(['\t', '2026-11-24 08:00', 22.5]);
  });
});

describe('order of dates', () => {
  const day = (n: number) => lines(3, (i, c) => `0${n}/04/26 ${c},2${i}`);
  it('is settled by days that follow each other', () => {
    const u = read(`t,temp\n${day(3)}\n${day(4)}\n${day(5)}`);
    expect([u.dateOrder, asked(u).includes('date-order')]).toEqual(['dmy', false]);
  });
  it('is asked when one day alone leaves it open, and taken as told', () => {
    expect(asked(read(`t,temp\n${day(3)}`))).toContain('date-order');
    const told = read(`t,temp\n${day(3)}`, { dateOrder: 'mdy' });
    expect([first(told), asked(told).includes('date-order')]).toEqual(['2026-03-04 08:00', false]);
  });
  it('a reading cannot lie in the future', () => {
    const u = read(`t,temp\n${lines(3, (i, c) => `03/12/26 ${c},2${i}`)}`, {
      latestS: dayNumber(2026, 3, 20)! * 86400,
    });
    expect([u.dateOrder, asked(u).includes('date-order')]).toEqual(['mdy', false]);
  });
});

describe('what is odd', () => {
  it('a gap is named with its hours', () => {
    const u = read(
      `t,temp °C\n2026-11-24 08:00,25\n2026-11-24 08:10,25.1\n2026-11-24 08:20,25\n2026-11-24 11:20,25.2\n2026-11-24 11:30,25\n`,
    );
    expect(u.findings.find((f) => f.id === 'gap')?.say).toBe('No reading for 3.0 h.');
  });
  it('a clock reset to its birthday', () => {
    const u = read(
      `t,temp °C\n2000-01-01 00:00,25\n2000-01-01 00:10,25\n${lines(6, (i, c) => `2026-11-24 ${c},2${i}`)}`,
    );
    expect([ids(u).includes('clock-reset'), u.rejectedByReason['clock-reset'], u.log.timesS.length]).toEqual([
      true,
      2,
      6,
    ]);
  });
  it('the hour that comes twice', () => {
    const pass = (v: number) =>
      [0, 10, 20, 30, 40, 50].map((m) => `2026-10-25 02:${String(m).padStart(2, '0')},${v}`).join('\n');
    const u = read(`t,temp °C\n2026-10-25 01:50,20\n${pass(22)}\n${pass(24)}\n2026-10-25 03:00,24\n`);
    expect(ids(u)).toContain('doubled-hour');
    expect(u.log.timesS).toHaveLength(8);
    expect(values(u, 0)[1]).toBe(23);
    expect(u.rowsRead).toBe(14);
  });
  it('newest first', () => {
    const u = read(`t,temp °C\n2026-11-24 09:00,23\n2026-11-24 08:30,22\n2026-11-24 08:00,21\n`);
    expect([ids(u), values(u, 0)]).toEqual([['reversed'], [21, 22, 23]]);
  });
  it('a frozen sensor beside one that moves', () => {
    const u = read(
      `t,warm °C,cool °C\n${Array.from({ length: 60 }, (_, i) => `2026-11-24 ${String(Math.floor(i / 6)).padStart(2, '0')}:${(i % 6) * 10},${i < 5 ? 28 : 28.4},${(22 + i / 20).toFixed(1)}`.replace(':0,', ':00,')).join('\n')}`,
    );
    expect(u.findings.find((f) => f.id === 'frozen')?.channelId).toBe('c2');
  });
  it('error codes and impossible values count as no reading', () => {
    const u = read(
      `t,temp °C\n${Array.from({ length: 30 }, (_, i) => `2026-11-24 ${String(Math.floor(i / 6)).padStart(2, '0')}:${(i % 6) * 10 || '00'},${i === 4 ? -127 : i === 9 ? 999 : 25 + i / 100}`).join('\n')}`,
    );
    expect(u.findings.find((f) => f.id === 'impossible')?.count).toBe(2);
    expect(values(u, 0)[4]).toBeNull();
  });
  it('°F called °C is asked about, never turned over silently', () => {
    const text = `t,Celsius(°C)\n${lines(4, (i, c) => `2026-11-24 ${c},8${i}.5`)}`;
    expect(asked(read(text))).toContain('unit');
    expect(values(read(text), 0)[0]).toBe(80.5);
    expect(values(read(text, { tempUnit: 'F' }), 0)[0]).toBeCloseTo(26.94, 2);
  });
  it('two ends exchanged', () => {
    const u = read(`t,warm °C,cool °C\n${lines(20, (i, c) => `2026-11-24 ${c},24.${i % 10},31.${i % 10}`)}`);
    expect([ids(u).includes('channels-swapped'), asked(u).includes('swapped')]).toEqual([true, true]);
  });
  it('a typed log without any variance', () => {
    expect(ids(read(`t,temp °C\n${lines(30, (_, c) => `2026-11-24 ${c},30.0`)}`))).toContain('no-variance');
  });
});

describe('what is no log', () => {
  it.each([
    ['', 'LOG_EMPTY'],
    ['\n\n ; ; \n', 'LOG_EMPTY'],
    ['hello,world\nthis,is no log\n', 'LOG_NO_TIMES'],
    ['<html><body>not found</body></html>', 'LOG_NO_TIMES'],
    ['time,note\n2026-11-24 10:00,fine\n2026-11-24 11:00,good\n', 'LOG_NO_NUMBERS'],
    ['time,temp\n2026-11-24 10:00,25\n', 'LOG_NO_TIMES'],
    ['=cmd|x,2026-13-45 99:99,1\n=cmd|x,2026-13-45 99:99,2', 'LOG_NO_TIMES'],
  ])('%j', (text, code) => expect(faultsOf(text)).toEqual([code]));
});
