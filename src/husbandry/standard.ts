// What a space standard is: one row of data/standards.json. Lengths in metres, areas in square metres.
// L is the total length of the snake, nose to tail tip.
import type { Sourced } from './need.ts';

/** Box sides as shares of L; null = the standard says nothing about that side. */
export interface SharesRule {
  readonly kind: 'shares';
  readonly lengthShare: number;
  readonly widthShare: number | null;
  readonly heightShare: number | null;
  /** Height is never asked to be more than this [m]. */
  readonly heightCapM?: number;
  /** How far under the asked size is still tolerated, share 0..1. */
  readonly underFrac?: number;
  /** Animals covered, and the volume added for each further one, share 0..1. */
  readonly animals?: number;
  readonly extraVolumeFrac?: number;
}

/** Floor area and height by bands of L. maxLengthM null = no upper end. */
export interface BandsRule {
  readonly kind: 'bands';
  readonly bands: readonly {
    readonly maxLengthM: number | null;
    readonly floorM2: number;
    /** null = height not read. */
    readonly heightM: number | null;
    readonly extraFloorM2: number;
  }[];
  readonly animals?: number;
}

/** Perimeter of the floor as a share of L and a least width. */
export interface PerimeterRule {
  readonly kind: 'perimeter';
  readonly perimeterShare: number;
  readonly widthMinM: number;
  readonly widthShare: number;
  /** Width need not be more than this [m]. */
  readonly widthCapM: number;
  readonly animals: number;
  readonly extraPerimeterFrac: number;
}

/** Length and width of the box together as a share of L. */
export interface SumRule {
  readonly kind: 'sum';
  readonly sumShare: number;
}

/** A fixed box. fullStretchAboveM: longer animals need a box as long as themselves. */
export interface FixedRule {
  readonly kind: 'fixed';
  readonly lengthM: number;
  readonly widthM: number;
  readonly heightM: number;
  readonly fullStretchAboveM?: number;
}

export type SpaceRule = SharesRule | BandsRule | PerimeterRule | SumRule | FixedRule;

export interface Standard extends Sourced {
  readonly id: string;
  /** Name as printed beside every verdict. */
  readonly name: string;
  readonly place: string;
  /** statute, statutory guidance, expert opinion, charity advice, veterinary advice, common practice. */
  readonly status: string;
  /** What it is written for: sale stock, home, laboratory, keepers. */
  readonly writtenFor: 'sale-stock' | 'home' | 'laboratory' | 'keepers';
  /** Species it covers; null = all snakes. */
  readonly speciesIds: readonly string[] | null;
  /** Animals it covers by habit; null = all. */
  readonly habit: 'ground' | 'climbing' | null;
  /** Lengths it covers [m]; null = open end. Low end excluded, high end included. */
  readonly fromLengthM: number | null;
  readonly toLengthM: number | null;
  readonly rule: SpaceRule;
  /** General rules of the same text that this one stands in for. */
  readonly replaces?: readonly string[];
  /** What another page says of the same rule. */
  readonly alternatives?: readonly Sourced[];
}
