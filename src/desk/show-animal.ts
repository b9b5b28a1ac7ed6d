// One animal on one sheet: who it is, whether it may go, what is due, what is missing, and all that ever happened.

import { lastOf } from '../animal/event.ts';
import { examinationVerdict } from '../animal/examination.ts';
import { mealAdvice, nextFeed } from '../animal/feeding.ts';
import { fitness } from '../animal/fitness.ts';
import { growthBand, lengthSeries, moveUp, ownRateCmPerMonth } from '../animal/growth.ts';
import { massFinding, massSeries, nextWeighing } from '../animal/mass-series.ts';
import { miteWatch, quarantineState, treatmentState } from '../animal/quarantine.ts';
import { registerFindings } from '../animal/register.ts';
import { majorAxis, scaledMassG } from '../animal/scaled-mass-index.ts';
import { fitFor, sizeCheck } from '../animal/size-check.ts';
import { sloughState } from '../animal/slough.ts';
import { wordOf } from '../husbandry/species-facts.ts';
import { draftOf } from '../records/animal-photos.ts';
import { type FactRow, factHistory } from '../records/animals.ts';
import { good, type Result } from '../shared/result.ts';
import { type AnimalRecord, type DeskSurroundings, recordOf, recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';

/** Faults: "ANIMAL_UNKNOWN". */
export async function showAnimal(desk: DeskContext, id: string): Promise<Result<AnimalSheet>> {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const [facts, draft, kin] = await Promise.all([
    factHistory(desk.db, id),
    draftOf(desk.db, id),
    // Others of its kind are needed only where its length is known.
    lastOf(found.value.events, 'length') ? recordsOf(desk, around, { gone: false }) : [],
  ]);
  return good(sheetOf(found.value, around, facts, draft !== undefined, kin));
}

export type AnimalSheet = ReturnType<typeof sheetOf>;

function sheetOf(
  record: AnimalRecord,
  around: DeskSurroundings,
  facts: readonly FactRow[],
  drafted: boolean,
  kin: readonly AnimalRecord[],
) {
  const { events, species, entry, row, stage, massG } = record;
  const { care, today } = around;
  const situation = { species, stage, events, facts: care, movedOn: record.movedOn, today, southern: around.southern };
  const feed = nextFeed(situation);
  const looked = lastOf(events, 'examination');
  return {
    id: row.id,
    today,
    place: around.place,
    branchId: row.branchId,
    enclosure: row.enclosure,
    gone: row.gone,
    speciesId: species.id,
    entry,
    stage,
    massG,
    totalLengthCm: record.totalLengthCm,
    fitness: fitnessOf(record, around),
    feeding: {
      ...feed,
      advice:
        stage && massG
          ? mealAdvice(species, stage, massG, Object.values(around.facts.prey), care, feed.mealFrac)
          : null,
    },
    mass: {
      finding: massFinding(events, care, today),
      series: massSeries(events),
      next: nextWeighing(events, care, stage !== 'adult', today),
    },
    length: lengthOf(record, around, kin),
    growth: { band: growthBand(species, care), ownCmPerMonth: ownRateCmPerMonth(lengthSeries(events), care) },
    slough: sloughState(events, care, today),
    quarantine: quarantineState(events, today),
    mites: miteWatch(events, care, today),
    treatment: treatmentState(events, today),
    examination: {
      last: looked,
      verdict: looked ? examinationVerdict(care.examination, looked.body.answers) : null,
      drafted,
    },
    register: registerOf(record, around),
    photos: events.filter((event) => event.kind === 'photo'),
    facts: facts.map((fact) => ({ ...fact, at: fact.at.toISOString() })),
    history: record.rows.map((one) => ({ ...one, at: one.at.toISOString(), recordedAt: one.recordedAt.toISOString() })),
  };
}

export const fitnessOf = (record: AnimalRecord, around: DeskSurroundings) =>
  fitness({
    species: record.species,
    events: record.events,
    facts: around.care,
    law: around.facts.law,
    place: around.place,
    arrivedOn: record.arrivedOn,
    today: around.today,
  });

export const registerOf = (record: AnimalRecord, around: DeskSurroundings) =>
  registerFindings(
    record.entry,
    record.events,
    around.care.register,
    around.place,
    wordOf(record.species, 'adult', 'euAnnex'),
  );

/** Length against mass: the species tables as a check, the shop's own animals as the index where they are enough. */
function lengthOf(record: AnimalRecord, around: DeskSurroundings, kin: readonly AnimalRecord[]) {
  const { species, massG, events } = record;
  const last = lastOf(events, 'length')?.body ?? null;
  const series = lengthSeries(events);
  if (last === null || massG === null) return { last, series, check: null, index: null };
  const measure = last.snoutVentMm === null ? 'total' : 'svl';
  const lengthMm = last.snoutVentMm ?? last.totalLengthCm * 10;
  const fit = fitFor(around.care.lengthMass, measure, species.family);
  const sized = kin.flatMap((one) =>
    one.species.id === species.id && one.massG !== null && one.totalLengthCm !== null
      ? [{ lengthMm: one.totalLengthCm * 10, massG: one.massG }]
      : [],
  );
  const wanted = Number(around.care.condition.lengthReferenceMinCount?.value ?? 8);
  const axis = sized.length >= wanted ? majorAxis(sized) : null;
  const index =
    axis?.ok === true
      ? {
          ...axis.value,
          scaledG: scaledMassG(massG, last.totalLengthCm * 10, axis.value.meanLengthMm, axis.value.exponent),
        }
      : null;
  return { last, series, check: fit ? sizeCheck(fit, lengthMm, massG) : null, index };
}

/** When it outgrows a box of this length. Faults: "ANIMAL_UNKNOWN". */
export async function moveUpOf(desk: DeskContext, id: string, boxLengthCm: number, lengthShare: number) {
  const around = await surroundings(desk);
  const found = await recordOf(desk, around, id);
  if (!found.ok) return found;
  const band = growthBand(found.value.species, around.care);
  const last = lengthSeries(found.value.events).at(-1);
  return good(band && last ? moveUp(band, last, boxLengthCm, lengthShare) : null);
}
