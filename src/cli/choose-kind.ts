// Which way of choosing is asked for on the command line. Apart, so that a plain plan loads none of it.
import type { RawOptions } from './options.ts';

export type ChooseKind = 'search' | 'faults' | 'stages';
export const chooseKinds: readonly ChooseKind[] = ['search', 'faults', 'stages'];

/** Which of the three is asked for, if any. */
export const chooseKindOf = (raw: RawOptions): ChooseKind | null =>
  chooseKinds.find((kind) => raw[kind] === true) ?? null;
