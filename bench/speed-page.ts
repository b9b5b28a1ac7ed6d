// docs/speed.md from the figures of one run. Leaves out measuring: the figures come from the other files of bench/.
import { cpus } from 'node:os';
import type { Took } from './clock.ts';
import type { SearchRow } from './search.ts';
import type { ColumnTimes, SteadyTimes, YearTimes } from './solver.ts';
import type { TwinAnswer } from './twin.ts';

interface Memory {
  readonly rss: number;
  readonly heap: number;
  readonly external: number;
}

export interface Figures {
  readonly twin: TwinAnswer;
  readonly steady: readonly SteadyTimes[];
  readonly columns: readonly ColumnTimes[];
  readonly year: YearTimes;
  readonly searches: readonly SearchRow[];
  readonly memory: Readonly<Record<'afterDay' | 'afterYear' | 'afterColumns', Memory>>;
  readonly load: readonly [number, number];
}

/** Limits; our choice, kept as ratios where a machine would otherwise decide. */
const limits = { twin: 1.5, steadyMs: 2, growth: 1, yearMs: 2000, searchFirstMs: 300, searchSettledMs: 3000 };

const ms = (t: Took): string => `${t.ms.toPrecision(3)} ± ${(100 * t.spread).toFixed(0)} %`;
const kept = (is: boolean): string => (is ? 'kept' : '**missed**');

export function speedPage(f: Figures): string {
  return [
    ...head(f),
    ...twinPart(f.twin),
    ...steadyPart(f),
    ...columnsPart(f.columns),
    ...yearPart(f),
    ...memoryPart(f),
    ...searchPart(f.searches),
  ]
    .join('\n')
    .concat('\n');
}

function head({ load }: Figures): string[] {
  return [
    '# Speed',
    '',
    'Written by `npm run bench -- --write`; every figure is from one run on one core. Times are CPU times of the process',
    '(compiling and collecting garbage included), medians, with half the distance between the quarter marks beside them.',
    'The program is bundled first: run through a loader that keeps function names, hot loops are slower than people see.',
    `Machine: ${cpus().length} cores, Node ${process.versions.node}; load ${load[0].toFixed(1)} at the start`,
    `and ${load[1].toFixed(1)} at the end, from other work on the same cores. Ratios mean more than times.`,
  ];
}

function twinPart(t: TwinAnswer): string[] {
  const rows = [
    '',
    '## A day under an on/off thermostat, beside C',
    '',
    `The wooden box of 1.2 m (${t.unknowns}), 24 hours in steps of 10 s, conductances and water renewed every 300 s,`,
    `${t.switches} switchings. The twin in bench/c-twin does the same work in the same order on the same numbers, compiled`,
    'with `cc -O3`. Each process stays on one core and they take turns.',
    '',
  ];
  if (!t.twin) return [...rows, `Ours: ${ms(t.ours)} ms. No C compiler on this machine, so no ratio.`];
  const ratio = t.ours.ms / t.twin.ms;
  return [
    ...rows,
    '| ours [ms] | C [ms] | ratio | limit | |',
    '|-|-|-|-|-|',
    `| ${ms(t.ours)} | ${ms(t.twin)} | ${ratio.toFixed(2)} | ${limits.twin} | ${kept(ratio <= limits.twin)} |`,
    '',
    `Answers differ by at most ${t.differsK.toExponential(0)} K in any temperature and ${t.differsBooks.toExponential(0)}`,
    'of any sum in the books.',
  ];
}

function steadyPart({ steady }: Figures): string[] {
  return [
    '',
    '## At rest, ideal thermostats',
    '',
    '| box | from nothing [ms] | from a room 1 K colder [ms] | rounds | limit [ms] | |',
    '|-|-|-|-|-|-|',
    ...steady.map(
      (s) =>
        `| ${s.box} | ${ms(s.cold)} | ${ms(s.warm)} | ${s.rounds} | ${limits.steadyMs} | ${kept(s.cold.ms <= limits.steadyMs)} |`,
    ),
  ];
}

function columnsPart(columns: readonly ColumnTimes[]): string[] {
  const first = columns[0]!;
  const last = columns.at(-1)!;
  const growth = (of: (c: ColumnTimes) => number) =>
    Math.log(of(last) / of(first)) / Math.log(last.columns / first.columns);
  const parts: [string, (c: ColumnTimes) => number][] = [
    ['at rest', (c) => c.steady.ms],
    ['two hours in steps of 10 s', (c) => c.twoHours.ms],
    ['building the model', (c) => c.build.ms],
  ];
  return [
    '',
    '## Cost against columns',
    '',
    'The same wooden box. Growth is the power of the number of columns from the first row to the last; 1 is linear.',
    '',
    '| columns | surfaces | building [ms] | at rest [ms] | two hours in steps of 10 s [ms] |',
    '|-|-|-|-|-|',
    ...columns.map((c) => `| ${c.columns} | ${c.surfaces} | ${ms(c.build)} | ${ms(c.steady)} | ${ms(c.twoHours)} |`),
    '',
    ...parts.map(([what, of]) => {
      const g = growth(of);
      return `- ${what}: power ${g.toFixed(2)}, limit ${limits.growth}: ${kept(g <= limits.growth)}`;
    }),
    '',
    'Panels cost in proportion to the columns, and so does the air, which is solved as a band. The long-wave exchange links',
    'every surface with every other; a box cut into more columns than the program itself takes (8 to 16, two more for each',
    'lamp, mat and panel) exchanges it in as many groups of neighbours as 16 columns have: what stays full does not grow further',
    '(docs/theory/box-radiation.md says how far that is from the full exchange). 32 and 64 columns serve only to see whether',
    'the answers still move.',
  ];
}

function yearPart({ year }: Figures): string[] {
  return [
    '',
    '## A year by the hour',
    '',
    `The wooden box under its proportional thermostat, 8760 hourly room temperatures, steps of half an hour: ${ms(year.took)} ms`,
    `(limit ${limits.yearMs} ms: ${kept(year.took.ms <= limits.yearMs)}), ${year.kWh.toFixed(0)} kWh. Its books miss`,
    `${year.heatMiss.toExponential(0)} of the heat and ${year.waterMiss.toExponential(0)} of the water. Against steps of five`,
    `minutes over four weeks the energy is ${(100 * year.energyOff).toFixed(2)} % off and the mean basking surface`,
    `${year.baskingOffK.toFixed(3)} K.`,
  ];
}

function memoryPart({ memory, twin }: Figures): string[] {
  const row = (what: string, m: Memory) =>
    `| ${what} | ${m.rss.toFixed(0)} | ${m.heap.toFixed(0)} | ${m.external.toFixed(1)} |`;
  return [
    '',
    '## Memory',
    '',
    '| after | whole process [MB] | heap in use [MB] | outside the heap [MB] |',
    '|-|-|-|-|',
    row('days of the wooden box', memory.afterDay),
    row('years', memory.afterYear),
    row('boxes of 64 columns', memory.afterColumns),
    '',
    `The C twin uses ${(twin.twinMemoryKb / 1000).toFixed(1)} MB.`,
  ];
}

function searchPart(rows: readonly SearchRow[]): string[] {
  if (rows.length === 0) return [];
  const took = (t: SearchRow['cold']) =>
    `${t.firstMs.toFixed(0)} and ${t.settledMs.toFixed(0)} | ${t.firstCpuMs.toFixed(0)} and ${t.settledCpuMs.toFixed(0)}`;
  const isKept = (t: SearchRow['cold']) =>
    kept(t.firstMs < limits.searchFirstMs && t.settledMs < limits.searchSettledMs);
  const row = (r: SearchRow, when: string, t: SearchRow['cold']) =>
    `| ${r.box}, ${when} | ${took(t)} | ${(t.settledCpuMs / r.stateMs).toFixed(0)} | ${isKept(t)} |`;
  return [
    '',
    '## A search for kits',
    '',
    'The starter shelf, 64 versions, the built worker on every core; elapsed times, because somebody waits, and the processor',
    'time of all threads beside them: shared over the cores it is what an idle machine would need. First ranked answer and',
    `settled one; limits ${limits.searchFirstMs} ms and ${limits.searchSettledMs} ms. Beside: processor time in states at rest of the same box.`,
    '',
    '| box | elapsed [ms] | processor [ms] | in states | |',
    '|-|-|-|-|-|',
    ...rows.flatMap((r) => [row(r, 'right after start', r.cold), row(r, 'warm', r.warm)]),
    '',
    'What was left unsolved, in versions: of arrangements whose kits are all certain to fail, of those that could not come first',
    'or be offered any more, and of those not looked at because vents or another place of the heater are not called for.',
    '',
    '| box | kits | solved | certain to fail | behind | not called for |',
    '|-|-|-|-|-|-|',
    ...rows.map(
      ({ box, kits, work: w }) => `| ${box} | ${kits} | ${w.solved} | ${w.lost} | ${w.behind} | ${w.needless} |`,
    ),
  ];
}
