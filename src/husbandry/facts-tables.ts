// From the tables of substrates, prey, cautions and fault cases to checked rows.

import type { Fact } from './fact.ts';
import { type CheckContext, dataFault, factFaults, isRecord, sourceFaults } from './fact-check.ts';
import type { Caution, FaultCase, Prey, SubstrateFacts } from './fact-tables.ts';
import { factParts, type Rows } from './facts-kit.ts';

type Row = Readonly<Record<string, unknown>>;
const isoDate = /^\d{4}-\d{2}-\d{2}$/;

/** Complaints about texts that must be there and words that must be on a list. */
export function wordFaults(
  ctx: CheckContext,
  at: string,
  row: Row,
  texts: readonly string[],
  choices: Readonly<Record<string, readonly string[]>> = {},
) {
  const faults = texts
    .filter((key) => typeof row[key] !== 'string' || row[key] === '')
    .map((key) => dataFault(ctx, `${at}.${key}`, 'DATA_FORM', row[key], 'a text', `The ${key} is missing.`));
  for (const [key, allowed] of Object.entries(choices)) {
    const given = Array.isArray(row[key]) ? row[key] : [row[key]];
    for (const word of given)
      if (!allowed.includes(String(word)))
        faults.push(
          dataFault(
            ctx,
            `${at}.${key}`,
            'DATA_FORM',
            word,
            allowed.join(', '),
            `The ${key} is not one of the known ones.`,
          ),
        );
  }
  return faults;
}

export function dateFaults(ctx: CheckContext, at: string, row: Row, keys: readonly string[]) {
  return keys
    .filter((key) => !isoDate.test(String(row[key])))
    .map((key) =>
      dataFault(ctx, `${at}.${key}`, 'DATA_FORM', row[key], 'a date like 2026-11-24', `The ${key} is not a date.`),
    );
}

export function substrateFrom(ctx: CheckContext, at: string, row: Row): Rows<SubstrateFacts> {
  const { facts, faults } = factParts(ctx, at, row, ['id', 'name']);
  const { moisture, burrowing, cautions } = facts;
  faults.push(...wordFaults(ctx, at, row, ['name']));
  for (const key of ['moisture', 'burrowing', 'cautions'])
    if (!(key in row))
      faults.push(dataFault(ctx, `${at}.${key}`, 'DATA_MISSING', null, 'a fact', 'A needed fact is missing.'));
  if (!moisture || !burrowing || !cautions || faults.length > 0) return { rows: [], faults };
  return { rows: [{ id: String(row.id), name: String(row.name), moisture, burrowing, cautions, facts }], faults };
}

export function preyFrom(ctx: CheckContext, at: string, row: Row): Rows<Prey> {
  const faults = [
    ...wordFaults(ctx, at, row, ['name', 'animal']),
    ...factFaults(ctx, `${at}.massG`, 'massG', row.massG),
  ];
  if (faults.length > 0) return { rows: [], faults };
  const note = typeof row.note === 'string' ? { note: row.note } : {};
  const massG = row.massG as Fact;
  return {
    rows: [{ id: String(row.id), name: String(row.name), animal: String(row.animal), massG, ...note }],
    faults,
  };
}

const deciders = ['electrician', 'fire service', 'doctor', 'vet', 'council', 'police', 'maker'];

export function cautionFrom(ctx: CheckContext, at: string, row: Row): Rows<Caution> {
  const faults = [
    ...wordFaults(ctx, at, row, ['topic', 'say'], { decides: deciders }),
    ...dateFaults(ctx, at, row, ['dateChecked']),
    ...sourceFaults(ctx, at, row),
  ];
  if (!Array.isArray(row.shownAt) || row.shownAt.length === 0)
    faults.push(dataFault(ctx, `${at}.shownAt`, 'DATA_FORM', row.shownAt, 'a list of places', 'It is shown nowhere.'));
  return { rows: faults.length > 0 ? [] : [row as unknown as Caution], faults };
}

export function faultCaseFrom(ctx: CheckContext, at: string, row: Row): Rows<FaultCase> {
  const faults = [
    ...wordFaults(ctx, at, row, ['title', 'say', 'sign', 'guard'], {
      group: ['heat', 'moisture', 'measurement', 'people'],
      shownBy: ['rehearsed', 'log', 'ask'],
      likelihood: ['rare', 'now-and-then', 'common'],
      harm: ['comfort', 'illness', 'death', 'fire'],
    }),
    ...sourceFaults(ctx, at, row),
  ];
  const rehearsed = Array.isArray(row.shownBy) && row.shownBy.includes('rehearsed');
  if (rehearsed !== (typeof row.rehearsal === 'string' && isRecord(row)))
    faults.push(
      dataFault(
        ctx,
        `${at}.rehearsal`,
        'DATA_FORM',
        row.rehearsal,
        'a text exactly when it is rehearsed',
        'How it is rehearsed is missing or too much.',
      ),
    );
  return { rows: faults.length > 0 ? [] : [row as unknown as FaultCase], faults };
}
