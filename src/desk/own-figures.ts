// The shop's own figures: how many of its animals died or came back, of how many that it heard of again, by species.
// A share is given only where enough were followed; the counts are always told.
import { numberOf } from '../animal/care-facts.ts';
import { type OwnShare, ownShare } from '../proving/aftercare/own-share.ts';
import { type OwnCountRow, ownCounts } from '../records/own-figures.ts';
import { aftercareUpToDate } from './aftercare/rebuild.ts';
import { surroundings } from './animal-record.ts';
import type { DeskContext } from './desk-context.ts';

export interface OwnFigure {
  /** Null: all species together. */
  readonly speciesId: string | null;
  readonly died: OwnShare;
  readonly returned: OwnShare;
}

export interface OwnFigures {
  readonly today: string;
  readonly waiting: number;
  readonly horizons: readonly { readonly days: number; readonly figures: readonly OwnFigure[] }[];
}

export async function ownFigures(desk: DeskContext): Promise<OwnFigures> {
  const { waiting } = await aftercareUpToDate(desk);
  const { today, care } = await surroundings(desk);
  const figureOf = (speciesId: string | null, row: Omit<OwnCountRow, 'speciesId'>): OwnFigure => ({
    speciesId,
    died: ownShare(row.died, row.followed, row.released, care.aftercare),
    returned: ownShare(row.returned, row.followed, row.released, care.aftercare),
  });
  const horizons = ['earlyDays', 'yearDays'].map(async (fact) => {
    const days = numberOf(care.aftercare, fact);
    const rows = await ownCounts(desk.db, desk.actor.branchId, days, today);
    const sum = (key: 'released' | 'followed' | 'died' | 'returned') => rows.reduce((s, row) => s + row[key], 0);
    const all = {
      released: sum('released'),
      followed: sum('followed'),
      died: sum('died'),
      returned: sum('returned'),
    };
    return { days, figures: [figureOf(null, all), ...rows.map((row) => figureOf(row.speciesId, row))] };
  });
  return { today, waiting, horizons: await Promise.all(horizons) };
}
