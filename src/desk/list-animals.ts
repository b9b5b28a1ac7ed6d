// All animals of the branch, or of the shop with those that are gone: one line each, what matters first.

import { daysBetween } from '../animal/calendar.ts';
import { mealAdvice, nextFeed } from '../animal/feeding.ts';
import { preyNeed } from '../animal/prey-stock.ts';
import { rangeOf } from '../husbandry/species-facts.ts';
import { type AnimalRecord, type DeskSurroundings, recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { fitnessOf, registerOf } from './show-animal.ts';

export async function listAnimals(desk: DeskContext, choice: { readonly all: boolean }) {
  const around = await surroundings(desk);
  const records = await recordsOf(
    desk,
    around,
    choice.all ? { seenAt: desk.actor.branchId } : { branchId: desk.actor.branchId, gone: false },
  );
  return { today: around.today, place: around.place, animals: records.map((record) => lineOf(record, around)) };
}

function lineOf(record: AnimalRecord, around: DeskSurroundings) {
  const { row, entry, species } = record;
  const feed = feedOf(record, around);
  return {
    id: row.id,
    callName: entry.callName ?? '',
    speciesId: species.id,
    enclosure: row.enclosure,
    branchId: row.branchId,
    gone: row.gone,
    stage: record.stage,
    massG: record.massG,
    fitness: fitnessOf(record, around).answer,
    feed: feed.state,
    feedFrom: feed.from,
    missing: registerOf(record, around).filter((one) => one.state === 'missing').length,
  };
}

export const feedOf = (record: AnimalRecord, around: DeskSurroundings) =>
  nextFeed({
    species: record.species,
    stage: record.stage,
    events: record.events,
    facts: around.care,
    movedOn: record.movedOn,
    today: around.today,
    southern: around.southern,
  });

/** Prey that the branch needs in the coming days. */
export async function preyForDays(desk: DeskContext, days: number) {
  const around = await surroundings(desk);
  const records = await recordsOf(desk, around, { branchId: desk.actor.branchId, gone: false });
  const eaters = records.map((record) => {
    const { species, stage, massG } = record;
    const feed = feedOf(record, around);
    const advice =
      stage && massG
        ? mealAdvice(species, stage, massG, Object.values(around.facts.prey), around.care, feed.mealFrac)
        : null;
    return {
      animalId: record.row.id,
      prey: advice?.prey[0] ?? null,
      intervalDays: stage ? rangeOf(species, stage, 'feedIntervalDays') : null,
      nextInDays: feed.broughtUpTwice || feed.from === null ? null : daysBetween(around.today, feed.from),
    };
  });
  return { days, ...preyNeed(eaters, days) };
}
