// What the customer has already, and how many of each: a thing that is in use once is not there a second time.

import type { ShelfItem } from '../shelf/shelf.ts';
import { isDrawn } from './drawn-items.ts';

/** Pieces of each thing by its id; ids that are not in it are not owned. */
export type Owned = ReadonlyMap<string, number>;

/** @param ids an id named twice stands for two pieces */
export function ownedFrom(ids: readonly string[]): Owned {
  const owned = new Map<string, number>();
  for (const id of ids) owned.set(id, (owned.get(id) ?? 0) + 1);
  return owned;
}

export const piecesOf = (owned: Owned, id: string): number => owned.get(id) ?? 0;

/** Whether the shop has one to sell; what stands in the drawing is not on its shelf. */
export const canBeBought = (item: ShelfItem): boolean => item.inStock && !isDrawn(item);
