// Searches, rehearses and looks years ahead, away from the page. A search ends when something newer is asked.
/// <reference lib="webworker" />
import example from '../../../data/examples/wood-1200.json';
import priors from '../../../data/priors.json';
import starter from '../../../data/shelf/starter.json';
import { careFactsFrom } from '../../animal/care-facts.ts';
import { climateNeeds } from '../../husbandry/climate-needs.ts';
import { shopFactsFor, type UsedShopValues } from '../../husbandry/used-shop-values.ts';
import { usualHomeStandardId } from '../../husbandry/usual-standard.ts';
import type { Priors } from '../../planning/ensemble.ts';
import { rehearseFaults, usualVersions } from '../../planning/faults/rehearse.ts';
import { settledMembers } from '../../planning/plan.ts';
import { driveSearch, type SurfaceSolver } from '../../planning/search/drive-search.ts';
import { judgeHome } from '../../planning/search/judge-home.ts';
import { otherBoxes } from '../../planning/search/other-boxes.ts';
import { type PreparedSearch, prepareSearch } from '../../planning/search/prepare-search.ts';
import { type SearchInput, usualTariff, usualYears } from '../../planning/search/search-input.ts';
import { searchKits } from '../../planning/search/search-kits.ts';
import { settingOf, taskSolver } from '../../planning/search/solve-task.ts';
import { type HomeJudge, type HomeSolver, spreadHomes } from '../../planning/search/spread-homes.ts';
import { surfaceStore } from '../../planning/search/surface-store.ts';
import { whatHelps } from '../../planning/search/what-helps.ts';
import { shelfFrom } from '../../planning/shelf/validate-shelf.ts';
import { stageRoads } from '../../planning/stages/stage-road.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { shipped } from '../worker/facts.ts';
import { type Helper, help, helperBehind } from './choose-helper.ts';
import type { ChooseAsk, ChooseEnvelope, ChooseReply, ChooseRequest } from './choose-protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (reply: ChooseReply, run = 0) => self.postMessage({ run, reply } satisfies ChooseEnvelope);
/** Seed of the draws, as everywhere else. */
const seed = 1;
/** Versions for each box of the road; a look ahead over years does not need more (our choice). */
const roadMembers = 8;

const careFiles = import.meta.glob<unknown>('../../../data/*.json', { eager: true, import: 'default' });

function careFacts() {
  const raw = Object.fromEntries(Object.entries(careFiles).map(([path, json]) => [path.replace(/^.*\//, ''), json]));
  return careFactsFrom(raw, new Set(Object.keys(shipped.sources))).facts;
}

function inputOf(ask: ChooseAsk, run = 0): Result<SearchInput> {
  const { used, input } = inputAndOwn(ask);
  tell({ kind: 'own', used }, run);
  return input;
}

function inputAndOwn(ask: ChooseAsk): { readonly used: UsedShopValues; readonly input: Result<SearchInput> } {
  const { animal } = ask.enclosure;
  // Any kit of the shelf may come in, so every value about kit counts.
  const own = shopFactsFor(shipped, ask.shopValues, {
    use: 'plan',
    animal,
    enclosure: null,
    standardId: ask.standardId,
  });
  return { used: own.used, input: inputWith(ask, own) };
}

function inputWith(ask: ChooseAsk, own: ReturnType<typeof shopFactsFor>): Result<SearchInput> {
  const { animal } = ask.enclosure;
  const { facts } = own;
  const species = animal ? facts.species[animal.speciesId] : undefined;
  if (!animal || !species)
    return bad([
      {
        code: 'PLAN_SPECIES',
        field: 'animal.speciesId',
        got: animal?.speciesId ?? 'no animal',
        allowed: Object.keys(facts.species).join(', '),
        say: 'The facts hold no such species.',
        fix: 'Choose one from the list.',
      },
    ]);
  const climate = climateNeeds(species, animal.stage);
  if (!climate.ok) return climate;
  const shelf = shelfFrom(ask.shelf ?? starter);
  if (!shelf.ok) return shelf;
  return good({
    enclosure: ask.enclosure,
    climate: climate.value,
    species,
    standard: facts.standards[own.standardId] ?? null,
    facts,
    priors: priors as Priors,
    shelf: shelf.value,
    ownedIds: ask.ownedIds,
    drawnIsOwned: ask.drawnIsOwned,
    boxIds: [],
    members: settledMembers,
    seed,
    tariffPerKWh: ask.tariffPerKWh,
    years: ask.years,
  });
}

/** Lets what was said to this worker be heard. A message of its own comes back at once; a timer that is set again and again
 *  is held back by four milliseconds each time. */
const rest = () =>
  new Promise<void>((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      go();
    };
    port2.postMessage(null);
  });

/** Somebody has asked something: no more getting ready. */
let asked = false;
/** No worker gets ready for longer than this [ms]; what is compiled by then is most of what is used (our choice). */
const readyMs = 1200;

/** Searches an example home until somebody asks, so that the engine has compiled by then. Keeps nothing, tells nothing. */
async function ready(): Promise<void> {
  const costs = { tariffPerKWh: usualTariff.perKWh, years: usualYears, drawnIsOwned: false };
  const enclosure = example as ChooseAsk['enclosure'];
  const { input } = inputAndOwn({
    enclosure,
    standardId: undefined,
    shopValues: [],
    shelf: null,
    ownedIds: [],
    ...costs,
  });
  if (!input.ok) throw new Error('data/ is damaged');
  const from = performance.now();
  const steps = searchKits({ ...input.value, members: 8 });
  while (!asked && performance.now() - from < readyMs && !steps.next().done) await rest();
}

/** The question being worked on; a newer one, or a stop, makes an older one end at its next step. */
let latest = 0;
let helper: Helper | null = null;
const store = surfaceStore();

/** Progress is told in steps of this size: the page that shows it shares the processor with the search (our choice). */
const toldStepFrac = 0.02;

async function search(ask: ChooseAsk, run: number): Promise<void> {
  latest = run;
  const over = () => latest !== run;
  const input = inputOf(ask, run);
  if (!input.ok) return tell({ kind: 'refused', faults: input.faults }, run);
  const prepared = prepareSearch(input.value);
  let toldFrac = 0;
  const answer = await driveSearch(input.value, solversFor(input.value, over, prepared), {
    prepared,
    store,
    cancelled: over,
    onProgress: (p) => {
      if (p.doneFrac >= toldFrac + toldStepFrac) {
        toldFrac = p.doneFrac;
        tell({ kind: 'progress', doneFrac: p.doneFrac }, run);
      }
      if (p.answer) tell({ kind: 'answer', answer: p.answer }, run);
    },
  });
  if (!answer) return;
  tell({ kind: 'answer', answer }, run);
  const first = answer.choices[0];
  if (first?.verdict === 'holds') return;
  const helps = first
    ? await whatHelps({ ...input.value, choice: first }, judgeFor(input.value, over))
    : await otherBoxes(input.value, (asked) => driveSearch(asked, solversFor(asked, over), { cancelled: over }));
  if (helps) tell({ kind: 'helps', helps }, run);
}

/** This worker and its helper, for one search. */
function solversFor(input: SearchInput, over: () => boolean, prepared?: PreparedSearch): SurfaceSolver[] {
  const solver = prepared ? null : taskSolver(settingOf(input));
  const own: SurfaceSolver = {
    solve: async (task, enclosure) => {
      await rest();
      if (over()) return [];
      return prepared ? prepared.solve(task) : solver!(task, enclosure);
    },
  };
  return helper ? [helper.solverFor(input), own] : [own];
}

/** The same two, to judge homes. */
function judgeFor(input: SearchInput, over: () => boolean): HomeJudge {
  const setting = settingOf(input);
  const own: HomeSolver = async (home) => {
    await rest();
    return judgeHome(home, setting);
  };
  return spreadHomes(helper ? [helper.judgeFor(input), own] : [own], rest, over);
}

/** A look ahead while nobody waits: what it solves is kept, what it finds is not told. */
async function warm(ask: ChooseAsk, run: number): Promise<void> {
  const input = inputOf(ask, run);
  if (!input.ok) return;
  latest = run;
  let shown = false;
  const prepared = prepareSearch(input.value);
  const over = () => shown || latest !== run;
  await driveSearch(input.value, solversFor(input.value, over, prepared), {
    prepared,
    store,
    cancelled: over,
    onProgress: (p) => {
      shown ||= p.answer !== null;
    },
  });
}

async function faults(ask: ChooseAsk): Promise<void> {
  const input = inputOf(ask);
  if (!input.ok) return tell({ kind: 'refused', faults: input.faults });
  const { enclosure, climate, facts, priors: beliefs } = input.value;
  const run = rehearseFaults({
    enclosure,
    climate,
    materials: facts.materials,
    priors: beliefs,
    cases: facts.faultCases,
    versions: usualVersions,
    seed,
  });
  for (;;) {
    const step = run.next();
    if (step.done) return tell({ kind: 'rehearsal', rehearsal: step.value });
    tell({ kind: 'finding', finding: step.value });
    await rest();
  }
}

async function stages(ask: ChooseAsk): Promise<void> {
  const input = inputOf(ask);
  const animal = ask.enclosure.animal;
  if (!input.ok || !animal) return tell({ kind: 'refused', faults: input.ok ? [] : input.faults });
  const standard = input.value.standard ?? input.value.facts.standards[usualHomeStandardId];
  if (!standard) throw new Error('data/ has no usual standard');
  const run = stageRoads({ ...input.value, standard, animal, care: careFacts(), members: roadMembers });
  for (let n = 0; ; n++) {
    const step = run.next();
    if (step.done) return tell({ kind: 'roads', roads: step.value });
    if (n % 8 === 0) await rest();
  }
}

self.onmessage = ({ data, ports }: MessageEvent<ChooseRequest>) => {
  asked ||= !['help', 'helper', 'ready'].includes(data.kind);
  const work = async (): Promise<void> => {
    if (data.kind === 'help') {
      const port = ports[0];
      if (port)
        help(port, () => {
          asked = true;
        });
    } else if (data.kind === 'helper') {
      const port = ports[0];
      if (port) helper = helperBehind(port);
    } else if (data.kind === 'ready') await ready();
    else if (data.kind === 'stop') latest = 0;
    else if (data.kind === 'warm') await warm(data.ask, data.run);
    else if (data.kind === 'search') await search(data.ask, data.run);
    else if (data.kind === 'faults') await faults(data.ask);
    else await stages(data.ask);
  };
  work().catch((error: unknown) =>
    tell(
      { kind: 'failed', say: error instanceof Error ? error.message : String(error) },
      data.kind === 'search' ? data.run : 0,
    ),
  );
};
