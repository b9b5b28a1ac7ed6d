// Changes every value of data/ a little, one at a time, and asks who notices. In this process, without starting anything.
import { type Leaf, type Place, placesOf, type Raw, slipsOf, wordsAt } from './leaves.ts';
import { type Court, courtOf, type WitnessKind } from './witnesses.ts';

export interface Noticed {
  readonly place: Place;
  /** The strongest witness that notices every slip; null when one slip goes unnoticed. */
  readonly by: WitnessKind | null;
  /** A slip that nobody notices. */
  readonly unnoticed: Leaf | undefined;
}

export function noticedSlips(raw: Raw, court: Court = courtOf(raw)): readonly Noticed[] {
  const places = placesOf(raw);
  const words = wordsAt(places);
  return places.map((place) => {
    const witnesses = court.witnessesOf(place);
    const slips = slipsOf(place, words);
    const whole = witnesses.find(({ notices }) => slips.every(notices));
    if (whole) return { place, by: whole.kind, unnoticed: undefined };
    const unnoticed = slips.find((slip) => !witnesses.some(({ notices }) => notices(slip)));
    // Each slip has somebody, though not the same one: the weakest of them counts.
    const by = unnoticed === undefined ? (witnesses.at(-1)?.kind ?? null) : null;
    return { place, by, unnoticed };
  });
}

export interface Shares {
  readonly table: string;
  readonly values: number;
  readonly by: Readonly<Partial<Record<WitnessKind, number>>>;
}

/** How many values each kind of witness stands for, by table and in all. */
export function sharesOf(noticed: readonly Noticed[]): readonly Shares[] {
  const tables = new Map<string, { values: number; by: Partial<Record<WitnessKind, number>> }>();
  for (const { place, by } of noticed)
    for (const table of [place.file.startsWith('species/') ? 'species' : place.file.replace('.json', ''), 'all']) {
      const row = tables.get(table) ?? { values: 0, by: {} };
      row.values += 1;
      if (by) row.by[by] = (row.by[by] ?? 0) + 1;
      tables.set(table, row);
    }
  return [...tables].map(([table, row]) => ({ table, ...row }));
}
