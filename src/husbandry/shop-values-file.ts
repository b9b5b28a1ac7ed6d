// The file in which a branch's own values leave the desk and reach a terminal: written, and read with every fault.
// Leaves out whether a value fits the facts (overlay.ts).
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { isRecord } from './fact-check.ts';
import type { ShopValue } from './shop-value.ts';

export const shopValuesFormat = 'warmstead-shop-values';
export const shopValuesVersion = 1;

export interface ShopValuesFile {
  readonly format: typeof shopValuesFormat;
  readonly version: typeof shopValuesVersion;
  readonly shopName: string;
  readonly branchName: string;
  /** ISO time at which it was written. */
  readonly writtenAt: string;
  readonly values: readonly ShopValue[];
}

const fault = (field: string, got: unknown, allowed: string, say: string): Fault => ({
  code: 'SHOPVALUES_FORM',
  field,
  got: (JSON.stringify(got) ?? 'nothing').slice(0, 80),
  allowed,
  say,
  fix: 'Export the file from the desk again.',
});

const textFields = ['path', 'by', 'at', 'why'] as const;

function partsFaults(at: string, name: string, x: unknown): Fault[] {
  if (!isRecord(x)) return [fault(`${at}.${name}`, x, 'an object of parts', `"${name}" is missing.`)];
  const plain = (v: unknown) => v === null || typeof v === 'string' || (typeof v === 'number' && Number.isFinite(v));
  return Object.entries(x)
    .filter(
      ([key, v]) =>
        !['low', 'high', 'value', 'values'].includes(key) || !(plain(v) || (Array.isArray(v) && v.every(plain))),
    )
    .map(([key, v]) => fault(`${at}.${name}.${key}`, v, 'low, high, value or values', 'This part cannot be read.'));
}

/** Faults, all at once: "SHOPVALUES_FORM". */
export function shopValuesFrom(x: unknown): Result<readonly ShopValue[]> {
  if (!isRecord(x) || x.format !== shopValuesFormat || x.version !== shopValuesVersion)
    return bad([
      fault(
        '',
        isRecord(x) ? x.format : x,
        `"format": "${shopValuesFormat}", "version": 1`,
        'This is no file of shop values.',
      ),
    ]);
  if (!Array.isArray(x.values)) return bad([fault('values', x.values, 'a list', 'The values are missing.')]);
  const faults = x.values.flatMap((row: unknown, i): Fault[] => {
    const at = `values[${i}]`;
    if (!isRecord(row)) return [fault(at, row, 'an object', 'This is no shop value.')];
    const texts = textFields
      .filter((key) => typeof row[key] !== 'string' || row[key] === '')
      .map((key) => fault(`${at}.${key}`, row[key], 'a text', `"${key}" is missing.`));
    const was = row.was === undefined ? [] : partsFaults(at, 'was', row.was);
    return [...texts, ...partsFaults(at, 'value', row.value), ...was];
  });
  if (faults.length > 0) return bad(faults);
  return good((x.values as readonly ShopValue[]).map((row) => ({ ...row, was: row.was ?? {} })));
}
