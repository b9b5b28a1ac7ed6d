// A branch's own values as they stand: for the browser's preview, for a file, for paper; and the lists they may overrule.
// Leaves out setting and withdrawing them.
import type { Fact, Source } from '../husbandry/fact.ts';
import { withShopValues } from '../husbandry/overlay.ts';
import { pathsOf, placeOf } from '../husbandry/overrulable.ts';
import type { ShopValue } from '../husbandry/shop-value.ts';
import { type ShopValuesFile, shopValuesFormat, shopValuesVersion } from '../husbandry/shop-values-file.ts';
import { allFacts } from '../records/animal-facts.ts';
import { branchFacts } from '../records/animals.ts';
import { type OverlayRow, overlayRows } from '../records/overlays.ts';
import type { Fault } from '../shared/fault.ts';
import type { DeskContext } from './desk-context.ts';
import { shopValues } from './shop-values.ts';
import { type ShownOverlay, shown } from './show-facts.ts';
import { todayOf } from './today.ts';

export interface StandingValues {
  readonly values: readonly ShopValue[];
  /** Those that the shipped facts no longer allow; they are not used. */
  readonly refused: readonly Fault[];
}

export async function standingValues(desk: DeskContext): Promise<StandingValues> {
  const values = await shopValues(desk);
  return { values, refused: withShopValues(allFacts().facts, values).faults };
}

export async function shopValuesFileOf(desk: DeskContext): Promise<ShopValuesFile> {
  const { shopName, branchName } = await branchFacts(desk.db, desk.actor.branchId);
  const writtenAt = desk.clock.now().toISOString();
  const values = await shopValues(desk);
  return { format: shopValuesFormat, version: shopValuesVersion, shopName, branchName, writtenAt, values };
}

export const listTables = ['policy', 'law', 'heaters', 'thermostats', 'substrates', 'materials'] as const;
export type ListTable = (typeof listTables)[number];

export interface ListedFact {
  readonly path: string;
  readonly fact: Fact;
  /** Words to choose from; null for numbers and free text. */
  readonly words: readonly string[] | null;
}

export interface ListedRow {
  readonly id: string;
  readonly name: string;
  /** What the row says in words, as a rule of law does. */
  readonly say: string;
  /** Where a rule of law holds. */
  readonly places: readonly string[];
  /** ISO days of a rule of law; null for others. */
  readonly dateChecked: string | null;
  readonly reviewBy: string | null;
  /** Past its review: shown amber. */
  readonly stale: boolean;
  readonly secondHand: boolean;
  readonly decides: string;
  readonly facts: readonly ListedFact[];
}

export interface ShownLists {
  readonly today: string;
  readonly shopName: string;
  readonly branchName: string;
  readonly lists: Readonly<Record<ListTable, readonly ListedRow[]>>;
  readonly sources: Readonly<Record<string, Source>>;
  readonly overlays: readonly ShownOverlay[];
  readonly refused: readonly Fault[];
  /** What of the shipped facts is not sound and therefore not used. */
  readonly leftOut: readonly Fault[];
}

const isListed = ({ path }: OverlayRow): boolean => listTables.includes(path.split('.')[0] as ListTable);

/** Policies, law and the kinds of kit, each row with what a shop may overrule in it and whether its review is due. */
export async function showLists(desk: DeskContext): Promise<ShownLists> {
  const { facts: shipped, leftOut } = allFacts();
  const rows = await overlayRows(desk.db, desk.actor.branchId);
  const { facts, faults } = withShopValues(shipped, await shopValues(desk));
  const today = todayOf(desk.clock);
  const { shopName, branchName } = await branchFacts(desk.db, desk.actor.branchId);
  const lists = Object.fromEntries(listTables.map((table) => [table, rowsOf(table)])) as ShownLists['lists'];
  return {
    today,
    shopName,
    branchName,
    lists,
    sources: facts.sources,
    overlays: rows.filter(isListed).map(shown),
    refused: faults,
    leftOut,
  };

  function rowsOf(table: ListTable): readonly ListedRow[] {
    const paths = pathsOf(shipped, table);
    const factsOf = (id: string): readonly ListedFact[] =>
      paths
        .filter((path) => path === `${table}.${id}` || path.startsWith(`${table}.${id}.`))
        .flatMap((path) => {
          const place = placeOf(shipped, path);
          return place ? [{ path, fact: place.fact, words: place.words }] : [];
        });
    const plain = {
      say: '',
      places: [],
      dateChecked: null,
      reviewBy: null,
      stale: false,
      secondHand: false,
      decides: '',
    };
    if (table === 'law')
      return facts.law.map(({ id, title: name, say, places, dateChecked, reviewBy, secondHand, decides }) => ({
        ...{ id, name, say, places, dateChecked, reviewBy, secondHand, decides },
        stale: reviewBy < today,
        facts: factsOf(id),
      }));
    const named: readonly (readonly [string, string])[] =
      table === 'policy'
        ? Object.values(shipped.policies).map(({ id, title }) => [id, title])
        : Object.values(table === 'materials' ? shipped.materialFacts : shipped[table]).map((row) => [
            row.id,
            row.name,
          ]);
    return named.map(([id, name]) => ({ ...plain, id, name, facts: factsOf(id) }));
  }
}
