// Which columns a shelf has, of what kind and within which limits; the check and the CSV both read these rows.
// Limits are our choice: wide enough for anything sold, narrow enough to catch centimetres taken for metres.
import { controlKinds, heaterKinds } from '../../physics/enclosure.ts';
import type { ShelfKind } from './shelf.ts';

export interface ShelfField {
  readonly key: string;
  readonly type: 'text' | 'number' | 'flag' | 'word';
  readonly low?: number;
  readonly high?: number;
  readonly words?: readonly string[];
  /** Kinds of item that carry it; null = all. */
  readonly of: readonly ShelfKind[] | null;
  /** May be null: mats and panels have a size, lamps have none. */
  readonly nullable?: boolean;
}

export const shelfKinds: readonly ShelfKind[] = [
  'enclosure',
  'heater',
  'thermostat',
  'guard',
  'holder',
  'thermometer',
  'hide',
  'substrate',
  'lock',
  'insulation',
  'cover',
];

const text = (key: string, of: ShelfField['of'] = null): ShelfField => ({ key, type: 'text', of });
const num = (key: string, low: number, high: number, of: ShelfField['of'], nullable = false): ShelfField => ({
  key,
  type: 'number',
  low,
  high,
  of,
  nullable,
});
const word = (key: string, words: readonly string[], of: ShelfField['of']): ShelfField => ({
  key,
  type: 'word',
  words,
  of,
});
const flag = (key: string, of: ShelfField['of'] = null): ShelfField => ({ key, type: 'flag', of });
const box = ['enclosure'] as const;

/** In the order of the columns of the CSV. */
export const shelfFields: readonly ShelfField[] = [
  text('id'),
  word('kind', shelfKinds, null),
  text('name'),
  num('price', 0, 100_000, null),
  flag('inStock'),
  word('heaterKind', heaterKinds, ['heater']),
  num('powerW', 1, 500, ['heater']),
  word('control', controlKinds, ['thermostat']),
  num('ratingW', 10, 5000, ['thermostat']),
  num('bandK', 0.05, 10, ['thermostat']),
  flag('hasCutOut', ['thermostat']),
  word('guards', ['body', 'panel'], ['guard']),
  word('material', ['ceramic', 'plastic'], ['holder']),
  word('thermometerKind', ['digital-probe', 'infrared-gun', 'stick-on-dial'], ['thermometer']),
  num('lengthM', 0.03, 4, ['heater'], true),
  num('depthM', 0.03, 2, ['heater'], true),
  num('lengthM', 0.03, 4, ['enclosure', 'hide']),
  num('depthM', 0.03, 2, ['enclosure', 'hide']),
  num('heightM', 0.02, 3, ['enclosure', 'hide']),
  text('wallMaterialId', box),
  num('wallThicknessM', 0.0005, 0.2, box),
  text('frontMaterialId', box),
  num('frontThicknessM', 0.0005, 0.2, box),
  num('meshShareFrac', 0, 1, box),
  num('lowVentM2', 0, 0.5, box),
  num('highVentM2', 0, 0.5, box),
  num('widestGapM', 0, 0.1, box),
  text('materialId', ['substrate', 'insulation']),
  num('packL', 0.5, 500, ['substrate']),
  num('thicknessM', 0.002, 0.2, ['insulation']),
  word('covers', ['mesh', 'floor'], ['cover']),
];

export const fieldsOf = (kind: ShelfKind): readonly ShelfField[] =>
  shelfFields.filter((field) => field.of === null || field.of.includes(kind));

/** Columns of the CSV, each once. */
export const shelfColumns: readonly string[] = [...new Set(shelfFields.map((field) => field.key))];
