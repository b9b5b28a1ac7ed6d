// What the pages of a pack are made of, before they are set: numbered parts, each a list of blocks.
import type { Drawing } from './drawings/drawing.ts';

export interface TitledDrawing {
  readonly title: string;
  readonly drawing: Drawing;
}

export type Block =
  | { readonly kind: 'text'; readonly text: string; readonly small?: boolean }
  /** Label and value, in two columns. */
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, value: string])[] }
  /** Words in bold, then a text. */
  | { readonly kind: 'list'; readonly items: readonly { readonly lead: string; readonly text: string }[] }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      /** Shares of the width. */
      readonly widths: readonly number[];
      readonly rows: readonly (readonly string[])[];
    }
  /** The one thing that must not be missed. */
  | {
      readonly kind: 'notice';
      readonly title: string;
      readonly lines: readonly string[];
      /** Short points under it, in two columns. */
      readonly bullets?: readonly string[];
    }
  | { readonly kind: 'drawing'; readonly drawn: TitledDrawing }
  | { readonly kind: 'pair'; readonly left: TitledDrawing; readonly right: TitledDrawing; readonly note: string }
  /** Empty rows to write in. */
  | {
      readonly kind: 'form';
      readonly head: readonly string[];
      readonly widths: readonly number[];
      readonly rows: number;
    }
  /** A label and a line to write on. */
  | { readonly kind: 'hand'; readonly lines: readonly { readonly label: string; readonly value: string }[] }
  | { readonly kind: 'sources'; readonly items: readonly string[]; readonly note: string };

export const packParts = [
  'animal',
  'home',
  'weeks',
  'feeding',
  'care',
  'trouble',
  'danger',
  'signs',
  'decision',
  'records',
  'signatures',
  'sources',
] as const;
export type PackPart = (typeof packParts)[number];

/** The number that a part carries on paper. */
export const numberOfPart = (part: PackPart): number => packParts.indexOf(part) + 1;

export const text = (said: string, small = false): Block => ({ kind: 'text', text: said, small });
