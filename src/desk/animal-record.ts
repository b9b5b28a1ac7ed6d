// Everything that is known of an animal, read once for whatever is asked of it.
import type { CareFacts } from '../animal/care-facts.ts';
import { type AnimalEvent, lastOf } from '../animal/event.ts';
import { lengthSeries } from '../animal/growth.ts';
import { lifeStageOf } from '../animal/life-stage.ts';
import { massSeries } from '../animal/mass-series.ts';
import type { RegisterEntry } from '../animal/register.ts';
import type { Facts, Species } from '../husbandry/fact.ts';
import { type Place, places } from '../husbandry/law-rule.ts';
import type { LifeStage } from '../physics/enclosure.ts';
import { type EventRow, eventRows, eventsByAnimal } from '../records/animal-events.ts';
import { allFacts } from '../records/animal-facts.ts';
import { type AnimalRow, animalsOf, branchFacts, registerEntries } from '../records/animals.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import type { DeskContext } from './desk-context.ts';
import { factsOfBranch } from './shop-values.ts';
import { todayOf } from './today.ts';

export interface AnimalRecord {
  readonly row: AnimalRow;
  readonly entry: RegisterEntry;
  readonly species: Species;
  readonly events: readonly AnimalEvent[];
  readonly rows: readonly EventRow[];
  readonly stage: LifeStage | null;
  readonly massG: number | null;
  readonly totalLengthCm: number | null;
  /** Day of arrival, else of hatching here. */
  readonly arrivedOn: string | null;
  /** Day on which it came to its present enclosure. */
  readonly movedOn: string | null;
}

export interface DeskSurroundings {
  readonly shopId: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly place: Place;
  /** New South Wales and Victoria have winter in July. */
  readonly southern: boolean;
  readonly today: string;
  readonly care: CareFacts;
  readonly facts: Facts;
}

export async function surroundings(desk: DeskContext): Promise<DeskSurroundings> {
  const branch = await branchFacts(desk.db, desk.actor.branchId);
  const place = (places as readonly string[]).includes(branch.place) ? (branch.place as Place) : 'england';
  const facts = await factsOfBranch(desk);
  return { ...branch, place, southern: isSouthern(place), today: todayOf(desk.clock), care: allFacts().care, facts };
}

export const isSouthern = (place: string): boolean => place === 'new-south-wales' || place === 'victoria';

export async function recordsOf(
  desk: DeskContext,
  around: DeskSurroundings,
  choice: Parameters<typeof animalsOf>[2],
): Promise<readonly AnimalRecord[]> {
  const animals = await animalsOf(desk.db, around.shopId, choice);
  const ids = animals.map((row) => row.id);
  const [entries, rows] = await Promise.all([registerEntries(desk.db, ids), eventRows(desk.db, ids)]);
  const events = eventsByAnimal(rows);
  const rowsOf = new Map<string, EventRow[]>();
  for (const row of rows) {
    const own = rowsOf.get(row.animalId);
    if (own) own.push(row);
    else rowsOf.set(row.animalId, [row]);
  }
  return animals.flatMap((row) => {
    const entry = entries.get(row.id) ?? {};
    const id = entry.speciesId ?? '';
    // The animal stays in the register when the facts of its species are gone or not sound.
    const species = around.facts.species[id] ?? speciesWithoutFacts(id);
    return [recordFrom(row, entry, species, events.get(row.id) ?? [], rowsOf.get(row.id) ?? [])];
  });
}

/** Under its id and with nothing known: what is asked of it is not known either. */
const speciesWithoutFacts = (id: string): Species => ({
  ...{ id, scientificName: id, commonName: id, family: '', notes: [] },
  ...{ all: {}, hatchling: {}, young: {}, adult: {} },
});

function recordFrom(
  row: AnimalRow,
  entry: RegisterEntry,
  species: Species,
  events: readonly AnimalEvent[],
  rows: readonly EventRow[],
): AnimalRecord {
  const totalLengthCm = lengthSeries(events).at(-1)?.totalLengthCm ?? null;
  const massG = massSeries(events).at(-1)?.massG ?? null;
  const day = (text: string | undefined): string | null => (text && text !== 'unknown' ? text : null);
  return {
    row,
    entry,
    species,
    events,
    rows,
    stage: lifeStageOf(species, totalLengthCm, massG),
    massG,
    totalLengthCm,
    arrivedOn: day(entry.acquiredOn) ?? day(entry.hatched),
    movedOn: lastOf(events, 'movement')?.on ?? null,
  };
}

/** Faults: "ANIMAL_UNKNOWN". */
export async function recordOf(desk: DeskContext, around: DeskSurroundings, id: string): Promise<Result<AnimalRecord>> {
  const found = await recordsOf(desk, around, { id, seenAt: desk.actor.branchId });
  return found[0] === undefined ? bad([animalFaults.unknown(id)]) : good(found[0]);
}
