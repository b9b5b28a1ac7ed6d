// The HTTP doors onto the branch's shelf.
import type { Shelf } from '../../planning/shelf/shelf.ts';
import { ask } from '../animal/animal-api.ts';

export interface ShelfChange {
  readonly version: number;
  readonly step: 'changed' | 'brought-in' | 'put-back';
  readonly backTo: number | null;
  readonly why: string;
  readonly at: string;
  readonly by: string;
}

export interface ShownShelf {
  readonly version: number;
  readonly shelf: Shelf;
  readonly changes: readonly ShelfChange[];
  readonly materials: readonly string[];
}

export interface KeptShelf {
  readonly version: number;
  readonly items: number;
}

export const shelfTable = '/api/shelf.csv';
export const readShelf = () => ask<ShownShelf>('/api/shelf');
export const keepShelf = (shelf: Shelf, base: number, why: string) =>
  ask<KeptShelf>('/api/shelf', 'PUT', { shelf, base, why });
export const bringInShelf = (text: string, base: number, why: string) =>
  ask<KeptShelf>('/api/shelf/table', 'POST', { text, base, why });
export const putBackShelf = (version: number, base: number) =>
  ask<KeptShelf>('/api/shelf/back', 'POST', { version, base });
