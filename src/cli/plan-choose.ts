// warmstead plan FILE --search | --faults | --stages: choosing, breaking and growing a home, from a terminal.
// Leaves out: the search itself (planning/search), and how answers are worded (choose-text.ts and its neighbours).
import { startKitSearchPool } from '../desk/kit-search-pool.ts';
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { Facts, Species } from '../husbandry/fact.ts';
import type { UsedShopValues } from '../husbandry/used-shop-values.ts';
import { usualHomeStandardId } from '../husbandry/usual-standard.ts';
import type { Enclosure, PlannedAnimal } from '../physics/enclosure.ts';
import type { Priors } from '../planning/ensemble.ts';
import { rehearseFaults, usualVersions } from '../planning/faults/rehearse.ts';
import { otherBoxes } from '../planning/search/other-boxes.ts';
import type { SearchInput } from '../planning/search/search-input.ts';
import { usualTariff, usualYears } from '../planning/search/search-input.ts';
import { stageRoads } from '../planning/stages/stage-road.ts';
import { loadCareFacts } from '../records/animal-facts.ts';
import { dataFile } from '../records/data-files.ts';
import { versions } from '../records/versions.ts';
import type { Verdict } from '../shared/verdict.ts';
import { type ChooseKind, chooseKinds } from './choose-kind.ts';
import { chooseWords } from './choose-words.ts';
import { displayFor, type Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { kitName, type Speaker } from './found-words.ts';
import { OptionReader, type RawOptions, unitSystems } from './options.ts';
import { faultLinesOf } from './plan-faults-text.ts';
import { searchLines, shapeOf } from './plan-search-text.ts';
import { stageLines } from './plan-stages-text.ts';
import { type ProgressLine, progressLine } from './progress-line.ts';
import { type RunContext, refuse, writeJson, writeLines } from './run-context.ts';
import { shelfOfFile } from './shelf-file.ts';
import { ownValueLines } from './shop-values.ts';

export interface ChooseAsked {
  readonly enclosure: Enclosure;
  readonly animal: PlannedAnimal;
  readonly species: Species;
  readonly climate: ClimateNeeds;
  readonly facts: Facts;
  /** The shop values that went into these facts. */
  readonly used: UsedShopValues;
  readonly standardId: string;
  readonly members: number;
  readonly seed: number;
}

/** Versions for each box of the road: a forecast over years does not need more (our choice). */
const roadMembers = 8;

const codeOf: Readonly<Record<Verdict, number>> = {
  holds: exitCodes.holds,
  fails: exitCodes.fails,
  'not-known': exitCodes.notKnown,
};

export async function chooseCommand(
  kind: ChooseKind,
  raw: RawOptions,
  asked: ChooseAsked,
  language: Language,
  run: RunContext,
): Promise<number> {
  const { terminal, messages } = run;
  const options = new OptionReader(raw, messages);
  const asJson = options.flag('json');
  options.apart([...chooseKinds]);
  const years = options.ranged('years') ?? usualYears;
  const tariffPerKWh = options.ranged('tariff') ?? usualTariff.perKWh;
  const units = options.word('units', unitSystems, 'metric');
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, asJson, run);
  const shelf = await shelfOfFile(options.text('shelf'), options.text('currency'), asked.facts, run);
  if (!shelf.ok) return refuse(shelf.faults, options.text('shelf') ?? '', asJson, run);
  const has = idsOf(options.text('has'));
  for (const id of has)
    if (!shelf.value.items.some((item) => item.id === id))
      options.fault(
        'CLI_CHOICE',
        'has',
        id,
        shelf.value.items.map((item) => item.id).join(' | '),
        messages.faults.choice('--has'),
      );
  if (shelf.value.currency !== usualTariff.currency && options.text('tariff') === null)
    options.fault(
      'CLI_NEEDS',
      'tariff',
      shelf.value.currency,
      messages.check.price,
      messages.faults.needs('--currency', '--tariff'),
    );
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, asJson, run);
  const words = chooseWords(language);
  const show = displayFor(units, language);
  const priors = dataFile('priors.json') as unknown as Priors;
  const { facts, species, climate, enclosure, seed } = asked;
  const standard = facts.standards[asked.standardId] ?? null;
  const input: SearchInput = {
    enclosure,
    climate,
    species,
    standard,
    facts,
    priors,
    shelf: shelf.value,
    ownedIds: has,
    drawnIsOwned: options.flag('own'),
    boxIds: [],
    members: asked.members,
    seed,
    tariffPerKWh,
    years,
  };
  const progress = progressLine(terminal);
  const text = { show, terminal, messages, words, climate };
  const out = { ok: true, versions: versions(), ...asked.used };
  const own = ownValueLines(asked.used, terminal, messages, show);
  const tell = (lines: readonly string[]) => writeLines(terminal, own.length > 0 ? [...lines, '', ...own] : lines);
  if (kind === 'search') {
    const { answer, helps } = await searched(input, progress, { show, words });
    const first = answer.choices[0];
    progress.end();
    if (asJson) writeJson(terminal, { ...out, answer, helps });
    else tell(searchLines({ ...text, answer, helps, enclosure }));
    return codeOf[first?.verdict ?? 'fails'];
  }
  if (kind === 'faults') {
    const rehearsal = finished(
      rehearseFaults({
        enclosure,
        climate,
        materials: facts.materials,
        priors,
        cases: facts.faultCases,
        versions: usualVersions,
        seed,
      }),
      progress,
    );
    progress.end();
    if (asJson) writeJson(terminal, { ...out, rehearsal });
    else tell(faultLinesOf({ ...text, rehearsal, enclosure }));
    return exitCodes.holds;
  }
  const care = loadCareFacts().facts;
  const roads = finished(
    stageRoads({
      ...input,
      standard: standard ?? facts.standards[usualHomeStandardId]!,
      animal: asked.animal,
      care,
      members: roadMembers,
    }),
    progress,
  );
  progress.end();
  if (asJson) writeJson(terminal, { ...out, roads });
  else tell(stageLines({ ...text, roads, enclosure }));
  return exitCodes.holds;
}

/** The first ranking is named while the rest is worked out; what would help is looked for where nothing holds. */
async function searched(input: SearchInput, progress: ProgressLine, speaker: Speaker) {
  const pool = startKitSearchPool();
  try {
    const answer = await wanted(
      pool.search(input, {
        onProgress: (p) => {
          const first = p.answer?.choices[0];
          if (first) progress.found(speaker.words.soFar(`${shapeOf[first.verdict]} ${kitName(first, speaker)}`));
          progress.done(p.doneFrac);
        },
      }),
    );
    progress.found('');
    const first = answer.choices[0];
    if (first?.verdict === 'holds') return { answer, helps: [] };
    const onProgress = () => progress.tick();
    const helps = first
      ? pool.whatHelps({ ...input, choice: first }, { onJudged: onProgress })
      : otherBoxes(input, (asked) => pool.search(asked, { onProgress }));
    return { answer, helps: await wanted(helps) };
  } finally {
    await pool.close();
  }
}

async function wanted<T>(found: Promise<T | null>): Promise<T> {
  const known = await found;
  if (known === null) throw new Error('nobody cancelled this');
  return known;
}

/** Runs a generator to its end, ticking. */
function finished<T>(steps: Generator<unknown, T>, progress: ProgressLine): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    progress.tick();
  }
}

const idsOf = (text: string | null): readonly string[] =>
  (text ?? '')
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
