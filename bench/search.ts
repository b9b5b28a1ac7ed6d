// How fast is a search for kits? First ranked answer and settled one, right after the start and once warm, with what was
// left unsolved and why. Targets: a first answer under 300 ms and a settled one under 3 s on two cores, for 500 kits or more
// and 64 versions. Started by run.ts, which bundles it; the built worker solves. Times depend on what else the machine does:
// the processor time of all threads and the time of one settled state are given beside them.
// Usage: search --box wood-1200 [--single] [--keep FILE]
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startKitSearchPool } from '../src/desk/kit-search-pool.ts';
import { climateNeeds } from '../src/husbandry/climate-needs.ts';
import { boxGeometry, modelFrom, settleBox } from '../src/physics/simulate.ts';
import { drawMembers, type Priors } from '../src/planning/ensemble.ts';
import { momentsOf } from '../src/planning/member.ts';
import type { SearchAnswer } from '../src/planning/search/search-answer.ts';
import type { SearchInput } from '../src/planning/search/search-input.ts';
import { shelfFrom } from '../src/planning/shelf/validate-shelf.ts';
import { loadFacts } from '../src/records/facts.ts';
import { programRoot } from '../src/records/root.ts';

const data = join(programRoot(), 'data');
const read = (path: string): unknown => JSON.parse(readFileSync(join(data, path), 'utf8'));
const { facts } = loadFacts(data);
const priors = read('priors.json') as Priors;

/** The search of one example file with the starter shelf. */
export function searchInputOf(example: string, over: Partial<SearchInput> = {}): SearchInput {
  const enclosure = read(`examples/${example}.json`) as SearchInput['enclosure'];
  const species = facts.species[enclosure.animal?.speciesId ?? '']!;
  const climate = climateNeeds(species, enclosure.animal?.stage ?? 'adult');
  const shelf = shelfFrom(read('shelf/starter.json'));
  if (!climate.ok || !shelf.ok) throw new Error('data/ is damaged');
  return {
    enclosure,
    climate: climate.value,
    species,
    standard: null,
    facts,
    priors,
    shelf: shelf.value,
    ownedIds: [],
    drawnIsOwned: false,
    boxIds: [],
    members: 64,
    seed: 1,
    tariffPerKWh: 0.2486,
    years: 5,
    ...over,
  };
}

/** Time of one settled state of this box on one core, now [ms]. */
export function settledStateMs(input: SearchInput): number {
  const model = modelFrom(boxGeometry(input.enclosure, facts.materials), drawMembers(priors, 1, 1)[0]!);
  const moments = momentsOf(input.enclosure);
  const warm = settleBox(model, moments.winterDay);
  const started = performance.now();
  for (let i = 0; i < 40; i++)
    settleBox(model, { ...moments.winterDay, roomC: moments.winterDay.roomC + (i % 5) }, warm);
  return (performance.now() - started) / 40;
}

export interface SearchTiming {
  readonly firstMs: number;
  readonly settledMs: number;
  /** Processor time of all threads together up to each [ms]: shared over the cores it is what an idle machine would need. */
  readonly firstCpuMs: number;
  readonly settledCpuMs: number;
  readonly answer: SearchAnswer;
}

export async function timeSearch(
  pool: ReturnType<typeof startKitSearchPool>,
  input: SearchInput,
): Promise<SearchTiming> {
  const started = performance.now();
  const cpu = process.cpuUsage();
  const cpuMs = () => {
    const used = process.cpuUsage(cpu);
    return (used.user + used.system) / 1000;
  };
  let firstMs = Number.NaN;
  let firstCpuMs = Number.NaN;
  const answer = await pool.search(input, {
    onProgress: (p) => {
      if (!p.answer) return;
      firstMs = performance.now() - started;
      firstCpuMs = cpuMs();
    },
  });
  if (!answer) throw new Error('nobody cancelled this');
  return { firstMs, settledMs: performance.now() - started, firstCpuMs, settledCpuMs: cpuMs(), answer };
}

/** One box, in a process of its own: right after the workers were started, then again and again. */
export interface SearchRow {
  readonly box: string;
  readonly kits: number;
  readonly stateMs: number;
  readonly cold: Omit<SearchTiming, 'answer'>;
  readonly warm: Omit<SearchTiming, 'answer'>;
  readonly work: SearchAnswer['work'];
  readonly first: string;
}

const warmRounds = 3;

async function main(box: string): Promise<void> {
  const pool = startKitSearchPool(process.argv.includes('--single') ? 1 : undefined);
  const input = searchInputOf(box);
  const { answer, ...cold } = await timeSearch(pool, input);
  const rounds: SearchTiming[] = [];
  for (let i = 0; i < warmRounds; i++) rounds.push(await timeSearch(pool, input));
  await pool.close();
  const { answer: _, ...warm } = rounds.sort((a, b) => a.settledMs - b.settledMs)[(warmRounds - 1) / 2]!;
  const first = `${answer.choices[0]?.verdict} ${answer.choices[0]?.name}`;
  const row: SearchRow = {
    ...{ box, kits: answer.kitsTried, stateMs: settledStateMs(input), cold, warm, work: answer.work, first },
  };
  const said = (t: Omit<SearchTiming, 'answer'>) =>
    `first ${t.firstMs.toFixed(0)} ms settled ${t.settledMs.toFixed(0)} ms (processor ${t.firstCpuMs.toFixed(0)} and ${t.settledCpuMs.toFixed(0)})`;
  console.log(
    `${box}, ${row.kits} kits: right after start ${said(cold)}; warm ${said(warm)}; ${JSON.stringify(row.work)}; ${first}`,
  );
  const page = process.argv.indexOf('--keep');
  if (page > 0) writeFileSync(process.argv[page + 1]!, JSON.stringify(row));
}

const asked = process.argv.indexOf('--box');
if (asked > 0) await main(process.argv[asked + 1]!);
