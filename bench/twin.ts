// One day of the wooden box under an on/off thermostat, beside its twin in C on the very same numbers. The twin is compiled
// here with cc -O3 where there is a compiler; its answers must be ours to a millionth, or the comparison means nothing.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type RunOptions, runBox, runStateFrom, startTally } from '../src/physics/run.ts';
import { buildModel, settleBox } from '../src/physics/simulate.ts';
import { exampleBox, materials, switched, winterDay } from './boxes.ts';
import { cpuTimeOf, type Took, tookOf } from './clock.ts';
import { twinData } from './twin-data.ts';

export interface TwinAnswer {
  readonly ours: Took;
  /** Null where there is no C compiler. */
  readonly twin: Took | null;
  readonly twinMemoryKb: number;
  readonly switches: number;
  readonly unknowns: string;
  /** Largest difference of a temperature at the end or of an hourly reading [K], and of the books, relative. */
  readonly differsK: number;
  readonly differsBooks: number;
}

const options: RunOptions = { stepS: 10, renewS: 300 };
const rounds = 15;

export function besideTwin(folder: string): TwinAnswer {
  const e = switched(exampleBox('wood-1200'));
  const model = buildModel(e, materials);
  const start = runStateFrom(model, settleBox(model, { ...winterDay(e), isDay: false }));
  const room = e.room.winter;
  const day = () => {
    const tally = startTally(model);
    const hourly: number[] = [];
    let steps = 0;
    const end = runBox(model, room, start, 0, 24, options, tally, (m) => {
      if (++steps % 360 === 0) hourly.push(m.state.probeC[0]!);
    });
    return { end, tally, hourly };
  };
  const twin = compiled(folder);
  const box = join(folder, 'box.bin');
  const answers = join(folder, 'answers.bin');
  writeFileSync(box, Buffer.from(twinData(model, room, start, options).buffer));
  const oursMs: number[] = [];
  const twinMs: number[] = [];
  let memoryKb = 0;
  for (let i = 0; i < 6; i++) day();
  // turn and turn about, so that both meet the same machine
  for (let i = 0; i < rounds; i++) {
    if (twin) {
      const said = execFileSync(twin, [box, answers], { encoding: 'utf8' }).trim().split(' ');
      twinMs.push(Number(said[0]));
      memoryKb = Number(said[1]);
    }
    oursMs.push(cpuTimeOf(day));
  }
  const { end, tally, hourly } = day();
  const books = [tally.heatInJ, tally.heatOutJ, tally.latentJ, tally.storedJ, tally.switches];
  const more = [tally.waterInKg, tally.waterOutKg, tally.condensedKg, end.bodyC[0]!, end.probeC[0]!];
  const theirs = twin ? numbersIn(answers) : null;
  const row = end.box.row.length;
  return {
    ours: tookOf(oursMs),
    twin: twin ? tookOf(twinMs) : null,
    twinMemoryKb: memoryKb,
    switches: tally.switches,
    unknowns: `${model.grid.columns} columns, ${model.chains.length} surfaces, ${row} temperatures`,
    differsK: theirs ? largest([...end.box.row, ...hourly], theirs.subarray(0, row + 24), () => 1) : Number.NaN,
    differsBooks: theirs
      ? largest([...books, ...more], theirs.subarray(row + 24), (v) => Math.max(1e-3, Math.abs(v)))
      : Number.NaN,
  };
}

function compiled(folder: string): string | null {
  const source = join(process.cwd(), 'bench', 'c-twin');
  const files = readdirSync(source).filter((f) => f.endsWith('.c'));
  const program = join(folder, 'twin');
  try {
    execFileSync('cc', ['-O3', '-o', program, ...files.map((f) => join(source, f)), '-lm'], { stdio: 'inherit' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
  return existsSync(program) ? program : null;
}

function numbersIn(file: string): Float64Array {
  const bytes = readFileSync(file);
  return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}

function largest(ours: readonly number[], theirs: Float64Array, scale: (v: number) => number): number {
  if (ours.length !== theirs.length) return Number.POSITIVE_INFINITY;
  return ours.reduce((most, v, k) => Math.max(most, Math.abs(v - theirs[k]!) / scale(v)), 0);
}
