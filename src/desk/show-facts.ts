// What the reference screens show: the shipped facts of a species or of the standards, their sources, and what the
// shop has laid over them. Leaves out the drawing and the words.
import type { Facts, Source, Species } from '../husbandry/fact.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import type { Standard } from '../husbandry/standard.ts';
import { allFacts } from '../records/animal-facts.ts';
import { branchFacts } from '../records/animals.ts';
import { type OverlayRow, overlayRows } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { animalFaults } from './animal-faults.ts';
import type { DeskContext } from './desk-context.ts';
import { shopValueOf } from './shop-values.ts';
import { todayOf } from './today.ts';

export interface ShownOverlay {
  readonly id: string;
  readonly path: string;
  readonly value: OverlayRow['value'];
  readonly was: OverlayRow['was'];
  readonly why: string;
  readonly at: string;
  readonly by: string;
  readonly withdrawn: { readonly at: string; readonly by: string; readonly why: string } | null;
}

export interface ShownFacts {
  readonly today: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly species: readonly Species[];
  readonly standards: readonly Standard[];
  readonly sources: Readonly<Record<string, Source>>;
  /** Every value the branch ever set on what is shown, oldest first. */
  readonly overlays: readonly ShownOverlay[];
  /** Shop values that the shipped facts no longer allow; they are not used. */
  readonly refused: readonly Fault[];
}

export const shown = (row: OverlayRow): ShownOverlay => ({
  ...row,
  at: row.at.toISOString(),
  withdrawn: row.withdrawn && { ...row.withdrawn, at: row.withdrawn.at.toISOString() },
});

/** Keys of sources named anywhere in these rows. */
function sourcesOf(rows: readonly unknown[], facts: Facts): ShownFacts['sources'] {
  const keys = new Set<string>();
  JSON.stringify(rows, (key, value: unknown) => {
    if (key === 'source' && typeof value === 'string') keys.add(value);
    return value;
  });
  return Object.fromEntries(Object.entries(facts.sources).filter(([key]) => keys.has(key)));
}

/** Every species, or the one named, with the standards. Faults: "ANIMAL_SPECIES". */
export async function showFacts(desk: DeskContext, speciesId: string | null): Promise<Result<ShownFacts>> {
  const { facts } = allFacts();
  if (speciesId !== null && !Object.hasOwn(facts.species, speciesId))
    return bad([animalFaults.species(speciesId, Object.keys(facts.species))]);
  const species = Object.values(facts.species).filter(({ id }) => speciesId === null || id === speciesId);
  const standards = Object.values(facts.standards);
  const branch = await branchFacts(desk.db, desk.actor.branchId);
  const rows = await overlayRows(desk.db, desk.actor.branchId);
  const mine = rows.filter(
    ({ path }) => path.startsWith('policy.') || species.some(({ id }) => path.startsWith(`species.${id}.`)),
  );
  const standing = mine.filter(({ withdrawn }) => withdrawn === null).map(shopValueOf);
  return good({
    today: todayOf(desk.clock),
    shopName: branch.shopName,
    branchName: branch.branchName,
    species,
    standards,
    sources: sourcesOf([species, standards], facts),
    overlays: mine.map(shown),
    refused: withShopValues(facts, standing).faults,
  });
}
