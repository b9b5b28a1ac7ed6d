// Either a value or every fault at once.
import type { Fault } from './fault.ts';

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export const good = <T>(value: T): Result<T> => ({ ok: true, value });
export const bad = (faults: readonly Fault[]): Result<never> => ({ ok: false, faults });
