// How fast is a search for kits? First ranked answer and settled one, on all cores and on one, with what pruning skipped.
// Targets: a first answer under 300 ms and a settled one under 3 s on two cores, for 500 kits or more and 64 versions.
// Usage: tsx bench/search.ts [--single] [--boxes wood-1200,glass-mesh-900]     Times depend on what else the machine does:
// the time of one settled state is printed beside them, and the ratio to it.
import { readFileSync } from 'node:fs';
import { startKitSearchPool } from '../src/desk/kit-search-pool.ts';
import { climateNeeds } from '../src/husbandry/climate-needs.ts';
import { boxGeometry, modelFrom, settleBox } from '../src/physics/simulate.ts';
import { drawMembers, type Priors } from '../src/planning/ensemble.ts';
import { momentsOf } from '../src/planning/member.ts';
import type { SearchAnswer } from '../src/planning/search/search-answer.ts';
import type { SearchInput } from '../src/planning/search/search-input.ts';
import { shelfFrom } from '../src/planning/shelf/validate-shelf.ts';
import { loadFacts } from '../src/records/facts.ts';

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(`../data/${path}`, import.meta.url), 'utf8'));
const facts = loadFacts(new URL('../data', import.meta.url).pathname).facts;
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

async function main(): Promise<void> {
  const flag = process.argv.indexOf('--boxes');
  const boxes = (flag > 0 ? (process.argv[flag + 1] ?? '') : 'wood-1200,pvc-1200,glass-mesh-900').split(',');
  const pool = startKitSearchPool(process.argv.includes('--single') ? 1 : undefined);
  // twice: the first run warms the engine's compiler, as a page that has been open for a moment
  for (const round of ['cold', 'warm'])
    for (const box of boxes) {
      const input = searchInputOf(box);
      const stateMs = settledStateMs(input);
      const t = await timeSearch(pool, input);
      const { work } = t.answer;
      console.log(
        `${round} ${box.padEnd(16)} kits ${t.answer.kitsTried} first ${t.firstMs.toFixed(0)} ms settled ${t.settledMs.toFixed(0)} ms, processor ${t.firstCpuMs.toFixed(0)} and ${t.settledCpuMs.toFixed(0)} ms; ` +
          `state ${stateMs.toFixed(2)} ms, ratio ${(t.settledMs / stateMs).toFixed(0)}; versions solved ${work.solved} of ${work.all}, skipped ${work.skipped}; ` +
          `${t.answer.choices[0]?.verdict} ${t.answer.choices[0]?.name}`,
      );
    }
  await pool.close();
}

if (process.argv[1]?.endsWith('search.ts')) await main();
