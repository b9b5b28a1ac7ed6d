// What stands on a shop's shelf: every kind of thing that makes up a home, with its price, whether it is there, and what
// the simulator must know of it. Leaves out: where a thing goes in a box (kit/), and what an animal needs (husbandry).
import type { ControlKind, HeaterKind, Thermometer } from '../../physics/enclosure.ts';

interface OnShelf {
  readonly id: string;
  readonly name: string;
  /** In the shelf's own currency, tax included. */
  readonly price: number;
  readonly inStock: boolean;
}

/** A box to buy. Opaque walls of one material, a front of another, closed or with a mesh lid. */
export interface ShelfEnclosure extends OnShelf {
  readonly kind: 'enclosure';
  readonly lengthM: number;
  readonly depthM: number;
  readonly heightM: number;
  readonly wallMaterialId: string;
  readonly wallThicknessM: number;
  readonly frontMaterialId: string;
  readonly frontThicknessM: number;
  readonly meshShareFrac: number;
  /** Open area of the low and of the high vent, grille taken off [m2]. */
  readonly lowVentM2: number;
  readonly highVentM2: number;
  readonly widestGapM: number;
}

export interface ShelfHeater extends OnShelf {
  readonly kind: 'heater';
  readonly heaterKind: HeaterKind;
  readonly powerW: number;
  /** Size of a mat or panel; null for lamps and emitters. */
  readonly lengthM: number | null;
  readonly depthM: number | null;
}

export interface ShelfThermostat extends OnShelf {
  readonly kind: 'thermostat';
  readonly control: ControlKind;
  readonly ratingW: number;
  /** Differential or proportional band [K]. */
  readonly bandK: number;
  /** A second, independent cut-out is built in. */
  readonly hasCutOut: boolean;
}

/** Keeps the animal off a heater: round a lamp or emitter, or under a panel. */
export interface ShelfGuard extends OnShelf {
  readonly kind: 'guard';
  readonly guards: 'body' | 'panel';
}

export interface ShelfHolder extends OnShelf {
  readonly kind: 'holder';
  readonly material: 'ceramic' | 'plastic';
}

export interface ShelfThermometer extends OnShelf {
  readonly kind: 'thermometer';
  readonly thermometerKind: Thermometer['kind'];
}

export interface ShelfHide extends OnShelf {
  readonly kind: 'hide';
  readonly lengthM: number;
  readonly depthM: number;
  readonly heightM: number;
}

export interface ShelfSubstrate extends OnShelf {
  readonly kind: 'substrate';
  readonly materialId: string;
  /** Content of one pack [litres]; the price is for the pack. */
  readonly packL: number;
}

export interface ShelfLock extends OnShelf {
  readonly kind: 'lock';
}

/** Foam board for the outside of opaque panels; the price is for a square metre. */
export interface ShelfInsulation extends OnShelf {
  readonly kind: 'insulation';
  readonly materialId: string;
  readonly thicknessM: number;
}

/** Heat-proof sheet to cover mesh with, or leaves and cork for the floor; the price is for a square metre. */
export interface ShelfCover extends OnShelf {
  readonly kind: 'cover';
  readonly covers: 'mesh' | 'floor';
}

export type ShelfItem =
  | ShelfEnclosure
  | ShelfHeater
  | ShelfThermostat
  | ShelfGuard
  | ShelfHolder
  | ShelfThermometer
  | ShelfHide
  | ShelfSubstrate
  | ShelfLock
  | ShelfInsulation
  | ShelfCover;
export type ShelfKind = ShelfItem['kind'];

export interface Shelf {
  readonly format: 'warmstead-shelf';
  readonly version: 1;
  readonly name: string;
  /** Three letters, e.g. "GBP". */
  readonly currency: string;
  /** True for prices that nobody charges: the starter shelf. Shown wherever they are. */
  readonly invented: boolean;
  readonly items: readonly ShelfItem[];
}

export const itemsOf = <K extends ShelfKind>(shelf: Shelf, kind: K): readonly Extract<ShelfItem, { kind: K }>[] =>
  shelf.items.filter((item): item is Extract<ShelfItem, { kind: K }> => item.kind === kind);
