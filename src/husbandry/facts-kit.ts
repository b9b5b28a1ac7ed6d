// From the tables of materials, heaters and thermostats to checked rows. A row with a bad field is dropped and named.

import { controlKinds, heaterKinds } from '../physics/enclosure.ts';
import type { Material } from '../physics/material.ts';
import type { Fault } from '../shared/fault.ts';
import type { HeaterFacts, MaterialFacts, ThermostatFacts } from './fact.ts';
import { type CheckContext, dataFault, goodFacts, isRecord, sourceFaults } from './fact-check.ts';
import { conductivityLimits, densityLimits, type Limits } from './quantities.ts';

export interface Rows<T> {
  readonly rows: readonly T[];
  readonly faults: readonly Fault[];
}

/** Runs one parser over a list of rows; refuses an id that came before. */
export function rowsFrom<T extends { readonly id: string }>(
  ctx: CheckContext,
  x: unknown,
  parse: (ctx: CheckContext, at: string, row: Readonly<Record<string, unknown>>) => Rows<T>,
): Rows<T> {
  if (!Array.isArray(x))
    return { rows: [], faults: [dataFault(ctx, '', 'DATA_FORM', x, 'a list of rows', 'Not a list.')] };
  const rows: T[] = [];
  const faults: Fault[] = [];
  const seen = new Set<string>();
  x.forEach((row: unknown, i) => {
    const id = isRecord(row) ? row.id : undefined;
    const at = typeof id === 'string' && id !== '' ? id : `[${i}]`;
    if (!isRecord(row) || typeof id !== 'string' || id === '') {
      faults.push(dataFault(ctx, `${at}.id`, 'DATA_FORM', id, 'a text', 'The row has no id.'));
      return;
    }
    if (seen.has(id)) {
      faults.push(dataFault(ctx, `${at}.id`, 'DATA_TWICE', id, 'an id used once', 'This id came before.'));
      return;
    }
    seen.add(id);
    const found = parse(ctx, at, row);
    rows.push(...found.rows);
    faults.push(...found.faults);
  });
  return { rows, faults };
}

/** The facts among the parts of a row: every part that is an object. */
export function factParts(
  ctx: CheckContext,
  at: string,
  row: Readonly<Record<string, unknown>>,
  except: readonly string[],
  limits?: (key: string) => Limits | undefined,
) {
  const parts = Object.fromEntries(Object.entries(row).filter(([key]) => !except.includes(key)));
  return goodFacts(ctx, at, parts, limits);
}

const materialKeys = [
  'conductivityWPerMK',
  'densityKgPerM3',
  'heatCapacityJPerKgK',
  'emissivity',
  'shortWaveThroughFrac',
] as const;

export function materialFrom(
  ctx: CheckContext,
  at: string,
  row: Readonly<Record<string, unknown>>,
): Rows<MaterialFacts & { readonly material: Material }> {
  const kind = String(row.class);
  const faults: Fault[] = [];
  if (!(kind in conductivityLimits))
    faults.push(
      dataFault(ctx, `${at}.class`, 'DATA_FORM', kind, Object.keys(conductivityLimits).join(', '), 'Unknown class.'),
    );
  const limits = (key: string): Limits | undefined => {
    if (key === 'conductivityWPerMK') return conductivityLimits[kind];
    return key === 'densityKgPerM3' ? densityLimits[kind] : undefined;
  };
  const parts = factParts(ctx, at, row, ['id', 'name', 'class', 'use'], limits);
  faults.push(...parts.faults);
  const numberOf = (key: string): number => {
    const value = parts.facts[key]?.value;
    if (typeof value === 'number') return value;
    if (parts.faults.length === 0)
      faults.push(dataFault(ctx, `${at}.${key}`, 'DATA_MISSING', value, 'a number', 'A property is missing.'));
    return Number.NaN;
  };
  const [conductivityWPerMK, densityKgPerM3, heatCapacityJPerKgK, emissivity, shortWaveThroughFrac] = materialKeys.map(
    numberOf,
  ) as [number, number, number, number, number];
  const id = String(row.id);
  const name = String(row.name);
  const material = {
    id,
    name,
    conductivityWPerMK,
    densityKgPerM3,
    heatCapacityJPerKgK,
    emissivity,
    shortWaveThroughFrac,
  };
  if (faults.length > 0) return { rows: [], faults };
  const use = Array.isArray(row.use) ? row.use.map(String) : [];
  return { rows: [{ id, name, class: kind, use, facts: parts.facts, material }], faults };
}

const heaterNeeds = [
  'emitsLight',
  'offeredW',
  'radiantShareFrac',
  'shortWaveShareFrac',
  'beamDeg',
  'holder',
  'needsGuard',
  'lifeHours',
];

export function heaterFrom(ctx: CheckContext, at: string, row: Readonly<Record<string, unknown>>): Rows<HeaterFacts> {
  const id = heaterKinds.find((kind) => kind === row.id);
  const { facts, faults } = factParts(ctx, at, row, ['id', 'name']);
  if (!id)
    faults.push(dataFault(ctx, `${at}.id`, 'DATA_FORM', row.id, heaterKinds.join(', '), 'Unknown kind of heater.'));
  for (const key of heaterNeeds)
    if (!(key in row))
      faults.push(dataFault(ctx, `${at}.${key}`, 'DATA_MISSING', null, 'a fact', 'A needed fact is missing.'));
  if (!id || faults.length > 0) return { rows: [], faults };
  return { rows: [{ id, name: String(row.name), facts }], faults };
}

const fits = ['good', 'allowed', 'never'];

export function thermostatFrom(
  ctx: CheckContext,
  at: string,
  row: Readonly<Record<string, unknown>>,
): Rows<ThermostatFacts> {
  const id = controlKinds.find((kind) => kind === row.id);
  const { facts, faults } = factParts(ctx, at, row, ['id', 'name', 'drives']);
  if (!id)
    faults.push(
      dataFault(ctx, `${at}.id`, 'DATA_FORM', row.id, controlKinds.join(', '), 'Unknown kind of thermostat.'),
    );
  const drives = isRecord(row.drives) ? row.drives : {};
  for (const kind of heaterKinds) {
    const drive = drives[kind];
    const path = `${at}.drives.${kind}`;
    if (!isRecord(drive) || !fits.includes(String(drive.fit)) || typeof drive.why !== 'string')
      faults.push(
        dataFault(
          ctx,
          path,
          'DATA_FORM',
          drive,
          `fit (${fits.join(', ')}) and why`,
          'What it does with this heater is missing.',
        ),
      );
    else faults.push(...sourceFaults(ctx, path, drive));
  }
  if (!id || faults.length > 0) return { rows: [], faults };
  return { rows: [{ id, name: String(row.name), drives: drives as ThermostatFacts['drives'], facts }], faults };
}
