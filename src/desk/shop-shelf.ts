// The branch's shelf: what stands on it now, every change with who, when and why, a new one, and an earlier one put back.
// Until the branch has its own, the starter shelf with its invented prices stands.
// Leaves out: what makes a shelf sound (planning/shelf) and choosing kit from it (planning/search).
import type { Shelf } from '../planning/shelf/shelf.ts';
import { shelfFromCsv, shelfToCsv } from '../planning/shelf/shelf-csv.ts';
import { shelfFrom, shelfMaterialFaults } from '../planning/shelf/validate-shelf.ts';
import { allFacts } from '../records/animal-facts.ts';
import { dataFile } from '../records/data-files.ts';
import type { ShelfStep } from '../records/shelf-schema.ts';
import { insertShelf, type ShelfStamp, shelfDocument, shelfStamps } from '../records/shelves.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { shelfFaults } from './shelf-faults.ts';

export interface ShownShelf {
  /** 0: the starter shelf, the branch has none of its own. */
  readonly version: number;
  readonly shelf: Shelf;
  readonly changes: readonly ShelfStamp[];
  /** Materials that an article may name. */
  readonly materials: readonly string[];
}

export interface KeptShelf {
  readonly version: number;
  readonly items: number;
}

export function starterShelf(): Shelf {
  const read = shelfFrom(dataFile('shelf/starter.json'));
  if (!read.ok) throw new Error('data/shelf/starter.json is damaged');
  return read.value;
}

export async function showShelf({ db, actor }: DeskContext): Promise<ShownShelf> {
  const changes = await shelfStamps(db, actor.branchId);
  const version = changes[0]?.version ?? 0;
  const shelf = await shelfOf({ db, actor }, version);
  return { version, shelf: shelf ?? starterShelf(), changes, materials: Object.keys(allFacts().facts.materials) };
}

export const shelfAsCsv = async (desk: DeskContext): Promise<string> => shelfToCsv((await showShelf(desk)).shelf);

/** A version as it was kept; null when there is none such. */
async function shelfOf({ db, actor }: Pick<DeskContext, 'db' | 'actor'>, version: number): Promise<Shelf | null> {
  if (version === 0) return starterShelf();
  // it was sound when it was kept
  return (await shelfDocument(db, actor.branchId, version)) as Shelf | null;
}

/** @param base version that the change was made on
 *  Faults, all at once: those of a shelf ("SHELF_..."); then "SHELF_CHANGED" when somebody was quicker. */
export async function keepShelf(
  desk: DeskContext,
  raw: unknown,
  base: number,
  why: string,
  step: ShelfStep = 'changed',
  backTo: number | null = null,
): Promise<Result<KeptShelf>> {
  const read = shelfFrom(raw);
  if (!read.ok) return read;
  const faults = shelfMaterialFaults(read.value, allFacts().facts.materials);
  if (faults.length > 0) return bad(faults);
  const { actor, clock, db } = desk;
  const writer = { branchId: actor.branchId, at: clock.now(), by: actor.name };
  const version = await insertShelf(db, base, { document: read.value, step, backTo, why: why.trim() }, writer);
  if (version !== null) return good({ version, items: read.value.items.length });
  const newest = (await shelfStamps(db, actor.branchId))[0]?.version ?? 0;
  return bad([shelfFaults.changed(base, newest)]);
}

/** A table in place of the whole shelf. Name, currency and whether prices are invented come from its first line, else
 *  from the shelf that stands; invented prices do not outlive a table without that line.
 *  Faults: as keepShelf, each with its line of the table. */
export async function bringInShelf(
  desk: DeskContext,
  text: string,
  base: number,
  why: string,
): Promise<Result<KeptShelf>> {
  const { shelf } = await showShelf(desk);
  const materials = allFacts().facts.materials;
  const read = shelfFromCsv(text, { name: shelf.name, currency: shelf.currency, invented: false }, materials);
  return read.ok ? await keepShelf(desk, read.value, base, why, 'brought-in') : read;
}

/** An earlier shelf stands again, as a new version. Faults: "SHELF_VERSION", "SHELF_CHANGED". */
export async function putBackShelf(desk: DeskContext, version: number, base: number): Promise<Result<KeptShelf>> {
  const earlier = await shelfOf(desk, version);
  return earlier === null
    ? bad([shelfFaults.unknown(version)])
    : await keepShelf(desk, earlier, base, '', 'put-back', version);
}
