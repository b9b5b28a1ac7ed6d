// The harness must fail on a wrong value, on a value that is no number, and must not hide behind a list.
import { describe, expect, it } from 'vitest';
import { type CheckRow, judge } from './check-row.ts';
import { evidencePage } from './evidence-page.ts';
import { type Runner, rowsOf, type Table } from './table.ts';
import { cases } from './tables.ts';

const table: Table = {
  id: 'planted',
  run: 'double',
  kind: 'published',
  source: 'OWN',
  at: '',
  provenance: 'read',
  tolerance: { abs: 0.01 },
  why: 'test',
  rows: [{ id: 'X-1', title: 'twice three', in: { x: 3 }, out: { value: 6 }, unit: '-' }],
};
const double: Runner = (i) => ({ value: 2 * (i.x as number) });
const wrong: Runner = (i) => ({ value: 2.02 * (i.x as number) });
const row = (runner: Runner): CheckRow => rowsOf(table, { double: runner })[0] as CheckRow;
const listed = [{ id: 'X-1', quantity: 'value', reason: 'looked into' }];

describe('judge', () => {
  it('passes a right value', () => expect(judge(row(double), []).verdict).toBe('agrees'));
  it('fails a planted wrong value', () => expect(judge(row(wrong), []).verdict).toBe('disagrees'));
  it('fails a value that is no number', () =>
    expect(
      judge(
        row(() => ({ value: Number.NaN })),
        [],
      ).verdict,
    ).toBe('disagrees'));
  it('shows a listed disagreement with its reason', () =>
    expect(judge(row(wrong), listed)).toMatchObject({ verdict: 'known disagreement', reason: 'looked into' }));
  it('does not let a list hide a healed row', () => expect(judge(row(double), listed).verdict).toBe('agrees'));
  it('takes a band', () => {
    const band = { ...row(double), expected: { low: 5, high: 5.9 } };
    expect(judge(band, []).verdict).toBe('disagrees');
    expect(judge({ ...band, tolerance: { abs: 0.2 } }, []).verdict).toBe('agrees');
  });
});

describe('rowsOf', () => {
  it('refuses a table without its runner', () => expect(() => rowsOf(table, {})).toThrow('no runner'));
  it('refuses a runner that leaves a value out', () => expect(() => row(() => ({}))).toThrow('gives no "value"'));
});

describe('tables', () => {
  it('fail when one expected value of the real tables is changed', async () => {
    const rows = await cases();
    const real = rows.find((each) => each.id === 'P-030' && each.quantity === 'nusselt') as CheckRow;
    expect(judge(real, []).verdict).toBe('agrees');
    expect(judge({ ...real, expected: (real.expected as number) * 1.05 }, []).verdict).toBe('disagrees');
  });
  it('do not count unit agreement as published', async () => {
    const rows = await cases();
    const derived = rows.filter((each) => each.kind === 'published' && each.provenance === 'derived');
    expect(derived.map((each) => each.id)).toEqual([]);
  });
});

describe('evidence page', () => {
  it('shows a disagreement', () => {
    const page = evidencePage([judge(row(wrong), [])], { OWN: { citation: 'x', read: 'y' } }, []);
    expect(page).toContain('| disagrees |');
    expect(page).toContain('6.06');
  });
});
