// What is to be done at this desk today? Everything in one answer, each part short and by urgency; the rest is a page away.
import { daysBetween } from '../animal/calendar.ts';
import type { AnimalEvent } from '../animal/event.ts';
import { miteWatch, quarantineState, treatmentState } from '../animal/quarantine.ts';
import { roundLines, roundSum } from '../animal/round.ts';
import {
  concernsOfBranch,
  countDue,
  type DuePlace,
  type DueTaskRow,
  doneSince,
  dueOfBranch,
} from '../records/aftercare.ts';
import {
  halfDoneEnquiries,
  openPlacements,
  type PlacementName,
  placementNames,
  silentSources,
} from '../records/today.ts';
import { aftercareUpToDate } from './aftercare/rebuild.ts';
import { type AnimalRecord, type DeskSurroundings, recordsOf, surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';
import { listInstruments } from './instruments.ts';
import { feedOf } from './list-animals.ts';
import { fitnessOf } from './show-animal.ts';

/** Rows of one part on one page; our choice, about two screens. */
const pageRows = 40;
const fewRows = 12;
/** Counted up to here; above it the count says "more than". */
const mostCounted = 1000;
/** Half-done work older than this is history, not something to go on with; our choice. */
const recentDays = 60;
/** A source that has been silent longer was taken down; our choice. */
const silentDays = 14;
const silentIntervals = 3;
const soonDays = 3;

export async function showToday(desk: DeskContext, behind: DuePlace | null = null) {
  const { waiting } = await aftercareUpToDate(desk);
  const around = await surroundings(desk);
  const { branchId } = desk.actor;
  const now = desk.clock.now();
  const since = (days: number) => new Date(now.getTime() - days * 86_400_000);
  const due = await dueOfBranch(desk.db, branchId, around.today, pageRows + 1, behind);
  const page = due.slice(0, pageRows);
  const last = page.at(-1);
  const next = due.length > pageRows && last ? { to: last.to, placementId: last.placementId, key: last.key } : null;
  if (behind !== null) {
    const names = await placementNames(desk.db, [...new Set(page.map((row) => row.placementId))]);
    return { today: around.today, tasks: page.map((row) => taskRow(row, names, around.today)), next };
  }
  const [counts, concerns, done, open] = [
    await countDue(desk.db, branchId, around.today, mostCounted),
    await concernsOfBranch(desk.db, branchId, pageRows),
    await doneSince(desk.db, branchId, new Date(now.getFullYear(), now.getMonth(), now.getDate()), fewRows),
    await openPlacements(desk.db, branchId, fewRows),
  ];
  const named = [...page, ...concerns, ...done, ...open].map((row) => row.placementId);
  const names = await placementNames(desk.db, [...new Set(named)]);
  const animals = await recordsOf(desk, around, { branchId, gone: false });
  return {
    today: around.today,
    /** Placements whose tasks are still being worked out. */
    waiting,
    counts: { ...counts, most: mostCounted },
    concerns: concerns.map(({ eventId, placementId, urgency, toldAt, concerns: told }) => {
      return { ...nameOf(names, placementId), eventId, urgency, toldAt: toldAt.toISOString(), told };
    }),
    tasks: page.map((row) => taskRow(row, names, around.today)),
    next,
    done: done.map((row) => taskRow(row, names, around.today)),
    silent: (await silentSources(desk.db, branchId, now, since(silentDays), silentIntervals, fewRows)).map((one) => ({
      ...one,
      lastAt: one.lastAt?.toISOString() ?? null,
    })),
    animals: animals.flatMap((record) => animalRow(record, around)),
    held: animals.filter((record) => fitnessOf(record, around).answer === 'hold').length,
    feeding: feedingRow(animals, around),
    round: roundRow(animals, around),
    placements: open.map((one) => ({
      ...nameOf(names, one.placementId),
      changedAt: one.changedAt.toISOString(),
      next: nextOf(one, animals.find((a) => a.row.id === names.get(one.placementId)?.animalId) ?? null, around),
    })),
    enquiries: (await halfDoneEnquiries(desk.db, branchId, since(recentDays), fewRows)).map((one) => ({
      ...one,
      changedAt: one.changedAt.toISOString(),
    })),
    instruments: (await listInstruments(desk)).flatMap(({ id, name, temp }) => {
      const dueOn = temp.dueS === null ? null : new Date(temp.dueS * 1000).toISOString().slice(0, 10);
      const overdue = dueOn === null || daysBetween(around.today, dueOn) <= soonDays || !temp.checked;
      return overdue ? [{ id, name, dueOn }] : [];
    }),
    /** Nothing was ever entered here: the page then says how to begin. */
    fresh: animals.length === 0 && open.length === 0 && page.length === 0,
  };
}

const nobody = { enquiryId: '', animalId: '', title: '', callName: '', speciesId: '' };
const nameOf = (names: ReadonlyMap<string, PlacementName>, placementId: string) => ({
  ...(names.get(placementId) ?? nobody),
  placementId,
});

const taskRow = (row: DueTaskRow, names: ReadonlyMap<string, PlacementName>, today: string) => ({
  ...nameOf(names, row.placementId),
  key: row.key,
  kind: row.kind,
  from: row.from,
  to: row.to,
  ...row.task,
  state: row.state === 'open' ? (row.to < today ? 'overdue' : 'due') : row.state,
  doneOn: row.doneOn,
  doneEvent: row.doneEvent,
});

interface AnimalRow {
  readonly animalId: string;
  readonly callName: string;
  readonly speciesId: string;
  readonly enclosure: string;
  readonly what: 'vet' | 'treatment' | 'quarantine-may-end' | 'quarantine-ends' | 'mites-end';
  readonly on: string | null;
}

/** What asks for a hand at an animal today: the vet, a treatment that runs, a quarantine or a watch that ends. */
function animalRow(record: AnimalRecord, around: DeskSurroundings): AnimalRow[] {
  const { row, entry, species } = record;
  const events: readonly AnimalEvent[] = record.events;
  const { today, care } = around;
  const of = (what: AnimalRow['what'], on: string | null): AnimalRow => {
    const { id: animalId, enclosure } = row;
    return { animalId, callName: entry.callName ?? '', speciesId: species.id, enclosure, what, on };
  };
  const out: AnimalRow[] = [];
  if (fitnessOf(record, around).answer === 'vet') out.push(of('vet', null));
  const treated = treatmentState(events, today).running[0];
  if (treated) out.push(of('treatment', treated.since));
  const quarantine = quarantineState(events, today);
  if (quarantine.running && quarantine.mayEnd) out.push(of('quarantine-may-end', quarantine.overOn));
  else if (quarantine.running && quarantine.overOn !== null && soon(today, quarantine.overOn))
    out.push(of('quarantine-ends', quarantine.overOn));
  const mites = miteWatch(events, care, today);
  if (mites.watching && mites.overOn !== null && soon(today, mites.overOn)) out.push(of('mites-end', mites.overOn));
  return out;
}

const soon = (today: string, on: string): boolean => {
  const days = daysBetween(today, on);
  return days >= 0 && days <= soonDays;
};

function feedingRow(animals: readonly AnimalRecord[], around: DeskSurroundings) {
  const hungry = animals.flatMap((record) => {
    const { state } = feedOf(record, around);
    return state === 'due' || state === 'overdue' ? [{ name: record.entry.callName ?? '', state }] : [];
  });
  return {
    due: hungry.length,
    overdue: hungry.filter((one) => one.state === 'overdue').length,
    names: hungry.slice(0, 4).map((one) => one.name),
  };
}

function roundRow(animals: readonly AnimalRecord[], around: DeskSurroundings) {
  const lines = roundLines(
    animals.map(({ row, entry, species, arrivedOn, events }) => {
      return { animalId: row.id, callName: entry.callName ?? '', place: row.enclosure, species, arrivedOn, events };
    }),
    around.today,
  );
  return { ...roundSum(lines), left: lines.filter((line) => line.state === 'to-do').length, of: lines.length };
}

export type PlacementNext = 'plan' | 'proof' | 'animal' | 'release';

/** What is missing first, in the order of the work; the placement itself tells all of it. */
function nextOf(
  one: Awaited<ReturnType<typeof openPlacements>>[number],
  animal: AnimalRecord | null,
  around: DeskSurroundings,
): PlacementNext {
  if (one.planVerdict === null) return 'plan';
  if (one.proofVerdict !== 'proven' || one.proofVersion !== one.enquiryVersion) return 'proof';
  if (animal !== null && fitnessOf(animal, around).answer !== 'fit') return 'animal';
  return 'release';
}

export type Today = Awaited<ReturnType<typeof showToday>>;
