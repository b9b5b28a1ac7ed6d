// The published schema is the field table, and an independent validator (ajv) reads it as we do.
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatsText, schemaText } from '../../scripts/write-schema.ts';
import type { Fault } from '../shared/fault.ts';
import { enclosureFields } from './enclosure-fields.ts';
import { readField } from './field-reader.ts';
import { enclosureFrom, enclosureTree } from './validate-enclosure.ts';

const docs = new URL('../../docs/', import.meta.url);
const folder = new URL('../../data/examples/', import.meta.url);
const published = readFileSync(new URL('enclosure.schema.json', docs), 'utf8');
const accepts = new Ajv2020({ allErrors: true }).compile(JSON.parse(published));
const texts = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));

function fieldFaults(raw: unknown): Fault[] {
  const faults: Fault[] = [];
  readField(enclosureTree, raw, '', faults);
  return faults;
}

describe('published files', () => {
  it('docs/enclosure.schema.json is the field table (else run scripts/write-schema.ts)', () => {
    expect(published).toBe(schemaText());
  });
  it('docs/formats.md lists the field table (else run scripts/write-schema.ts)', () => {
    const page = readFileSync(new URL('formats.md', docs), 'utf8');
    expect(formatsText(page)).toBe(page);
  });
  it('ajv accepts every ready enclosure', () => {
    for (const text of texts) expect(accepts(JSON.parse(text)), JSON.stringify(accepts.errors)).toBe(true);
  });
});

interface Spot {
  readonly text: string;
  readonly path: readonly string[];
}

const spots: Spot[] = texts.flatMap((text) => pathsOf(JSON.parse(text)).map((path) => ({ text, path })));

function pathsOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, part]) => [[...path, key], ...pathsOf(part, [...path, key])]);
}

function changed(spot: Spot, change: (holder: Record<string, unknown>, key: string) => void): unknown {
  const raw = JSON.parse(spot.text);
  const holder = spot.path.slice(0, -1).reduce((at, step) => at[step], raw);
  change(holder, spot.path.at(-1) ?? '');
  return raw;
}

const fieldAt = (path: readonly string[]) =>
  enclosureFields.find(
    (f) =>
      f.path ===
      path
        .map((step) => (/^\d+$/.test(step) ? '[]' : step))
        .join('.')
        .replaceAll('.[]', '[]'),
  );

/** Both say yes or both say no; and where the schema says no, the whole validator does too. */
function agree(raw: unknown): void {
  const byAjv = accepts(raw);
  expect({ accepted: fieldFaults(raw).length === 0 }).toEqual({ accepted: byAjv });
  if (!byAjv) expect(enclosureFrom(raw, {}).ok).toBe(false);
}

describe('agreement with ajv', () => {
  it('at both ends of every number in every example', () => {
    let tried = 0;
    for (const spot of spots) {
      const { low, high, kind } = fieldAt(spot.path) ?? {};
      if (kind !== 'number' || low === undefined || high === undefined) continue;
      const step = Math.max(1e-9, (high - low) * 1e-9);
      for (const value of [low, high, low - step, high + step, low - 1e6, high * 1000 + 1]) {
        agree(changed(spot, (holder, key) => (holder[key] = value)));
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(2000);
  });

  it('over random changes of any part', () => {
    const value = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e4, max: 1e4 }),
      fc.string({ maxLength: 8, unit: 'binary' }),
      fc.constantFrom(null, true, '', [], {}, 'x'.repeat(61), 'x'.repeat(121), 'lamp-1', '\u001b[1m', '😀'.repeat(70)),
    );
    const act = fc.constantFrom('set', 'set', 'delete', 'add');
    const run = fc.property(fc.constantFrom(...spots), act, value, (spot, how, to) => {
      const raw = changed(spot, (holder, key) => {
        if (how === 'set') holder[key] = to;
        else if (Array.isArray(holder)) holder.push(to);
        else if (how === 'delete') delete holder[key];
        else holder[`${key}X`] = to;
      });
      agree(raw);
    });
    fc.assert(run, { numRuns: 3000 });
  });
});
