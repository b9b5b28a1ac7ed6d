// warmstead plan FILE: the verdict on every need of one animal in one home. Works without a database.
// Leaves out: the planning itself (desk/plan-job.ts) and how it is worded (plan-text.ts).
import { runPlanJob, usualPlan } from '../desk/plan-job.ts';
import { climateNeeds } from '../husbandry/climate-needs.ts';
import type { Facts, Species } from '../husbandry/fact.ts';
import { rangeOf } from '../husbandry/species-facts.ts';
import { shopFactsFor } from '../husbandry/used-shop-values.ts';
import { noStandard } from '../husbandry/usual-standard.ts';
import type { Enclosure, LifeStage, PlannedAnimal } from '../physics/enclosure.ts';
import { versions } from '../records/versions.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Verdict } from '../shared/verdict.ts';
import { chooseKindOf } from './choose-kind.ts';
import { displayFor, type Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import type { Messages, Season } from './messages/en.ts';
import { OptionReader, type RawOptions, unitSystems } from './options.ts';
import { planLines } from './plan-text.ts';
import {
  factsOfProgram,
  fileLabel,
  type RunContext,
  readEnclosure,
  refuse,
  writeJson,
  writeLines,
} from './run-context.ts';
import { shopValuesOf } from './shop-values.ts';

const stages: readonly LifeStage[] = ['hatchling', 'young', 'adult'];
const mapChoices = ['both', 'winter', 'summer', 'none'] as const;
const seasonsOf: Readonly<Record<(typeof mapChoices)[number], readonly Season[]>> = {
  both: ['winter', 'summer'],
  winter: ['winter'],
  summer: ['summer'],
  none: [],
};

const codeOf: Readonly<Record<Verdict, number>> = {
  holds: exitCodes.holds,
  fails: exitCodes.fails,
  'not-known': exitCodes.notKnown,
};

export async function planCommand(file: string, raw: RawOptions, language: Language, run: RunContext): Promise<number> {
  const { terminal, messages } = run;
  const options = new OptionReader(raw, messages);
  const asJson = options.flag('json');
  const members = options.ranged('members') ?? usualPlan.members;
  const seed = options.ranged('seed') ?? usualPlan.seed;
  const units = options.word('units', unitSystems, 'metric');
  const maps = seasonsOf[options.word('map', mapChoices, 'both')];
  const shipped = factsOfProgram();
  const speciesId = options.text('species') === null ? null : options.word('species', Object.keys(shipped.species), '');
  const standardId =
    options.text('standard') === null
      ? null
      : options.word('standard', [noStandard, ...Object.keys(shipped.standards)], '');
  const stage = options.text('stage') === null ? null : options.word('stage', stages, 'adult');
  if (options.faults.length > 0) return refuse(options.faults, messages.check.commandLine, asJson, run);

  const label = fileLabel(file, messages);
  const valuesFile = options.text('shopValues');
  const values = await shopValuesOf(valuesFile, run);
  if (!values.ok) return refuse(values.faults, valuesFile ?? '', asJson, run);
  const read = await readEnclosure(file, shipped, run);
  if (!read.ok) return refuse(read.faults, label, asJson, run);
  const wanted = withAnimal(read.value, speciesId, stage, shipped, messages);
  if (!wanted.ok) return refuse(wanted.faults, label, asJson, run);
  const enclosure = wanted.value;
  const animal = enclosure.animal as PlannedAnimal;
  const choosing = chooseKindOf(raw);
  const own = shopFactsFor(shipped, values.value, {
    use: 'plan',
    animal,
    enclosure: choosing === 'search' || choosing === 'stages' ? null : enclosure,
    standardId: standardId ?? undefined,
  });
  const { facts, used } = own;
  const species = facts.species[animal.speciesId] as Species;
  const climate = climateNeeds(species, animal.stage);
  if (!climate.ok) return refuse(climate.faults, label, asJson, run);
  if (choosing !== null) {
    const asked = {
      enclosure,
      animal,
      species,
      climate: climate.value,
      facts,
      used,
      standardId: own.standardId,
      members,
      seed,
    };
    return (await import('./plan-choose.ts')).chooseCommand(choosing, raw, asked, language, run);
  }
  const planned = runPlanJob({ enclosure, members, seed, standardId: own.standardId }, facts);
  if (!planned.ok) return refuse(planned.faults, label, asJson, run);
  const answer = { ...planned.value, ...used };
  if (asJson) writeJson(terminal, { ok: true, versions: versions(), enclosure, climate: climate.value, answer });
  else {
    const show = displayFor(units, language);
    writeLines(
      terminal,
      planLines({
        brief: options.flag('brief'),
        enclosure,
        climate: climate.value,
        answer,
        used,
        maps,
        show,
        terminal,
        messages,
      }),
    );
  }
  return codeOf[answer.verdict];
}

/** The enclosure with the animal that is asked for. An animal of the file keeps its length and mass when only its
 *  stage or species is replaced by the same one; else the usual length of that species and stage is taken. */
function withAnimal(
  enclosure: Enclosure,
  speciesId: string | null,
  stage: LifeStage | null,
  facts: Facts,
  messages: Messages,
): Result<Enclosure> {
  const inFile = enclosure.animal;
  const id = speciesId ?? inFile?.speciesId ?? null;
  const known = Object.keys(facts.species).sort().join(' | ');
  if (id === null) {
    return bad([{ code: 'CLI_NO_ANIMAL', field: 'animal', got: 'null', allowed: known, ...messages.faults.noAnimal }]);
  }
  const species = Object.hasOwn(facts.species, id) ? facts.species[id] : undefined;
  if (species === undefined) {
    return bad([
      { code: 'CLI_SPECIES', field: 'animal.speciesId', got: id, allowed: known, ...messages.faults.species },
    ]);
  }
  const asked: LifeStage = stage ?? inFile?.stage ?? 'adult';
  if (inFile !== null && inFile.speciesId === id && inFile.stage === asked) return good(enclosure);
  const lengthCm = rangeOf(species, asked, 'totalLengthCm');
  if (lengthCm === null) {
    const words = messages.faults.noLength(species.commonName);
    return bad([
      {
        code: 'CLI_NO_LENGTH',
        field: 'animal.totalLengthM',
        got: '-',
        allowed: `${messages.check.range('0.05', '8')} m`,
        ...words,
      },
    ]);
  }
  // The longest usual animal: the home must serve it too.
  const animal: PlannedAnimal = { speciesId: id, stage: asked, totalLengthM: lengthCm.high / 100, massG: null };
  return good({ ...enclosure, animal });
}
