import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { FaultFinding, FaultRehearsal } from './fault-answer.ts';
import { harmLines } from './harm-lines.ts';
import { rehearsals } from './rehearsals.ts';
import { hoursTo, rehearseFaults } from './rehearse.ts';

const input = searchInputOf('wood-1200');
const catalogue = JSON.parse(readFileSync(new URL('../../../data/faults.json', import.meta.url), 'utf8')) as readonly {
  id: string;
  shownBy: readonly string[];
}[];

function played(enclosure: Enclosure, only: readonly string[], versions = 2): FaultRehearsal {
  const { climate, priors, facts } = input;
  const run = rehearseFaults({
    enclosure,
    climate,
    materials: facts.materials,
    priors,
    cases: facts.faultCases,
    versions,
    seed: 1,
    only,
  });
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
  }
}
const one = (enclosure: Enclosure, id: string): FaultFinding => played(enclosure, [id]).findings[0]!;
const { enclosure } = input;

it('a home without a heater plays no fault of one', () => {
  const bare = { ...enclosure, heaters: [], thermostats: [] };
  const ids = ['H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'H7', 'H8', 'H10', 'H11', 'H13'];
  for (const finding of played(bare, ids).findings) expect([finding.id, finding.skipped]).toEqual([finding.id, true]);
  expect(one(bare, 'H19').skipped).toBe(false);
});

it('the faults that the catalogue calls rehearsed are those that are played, no more and no fewer', () => {
  const wanted = catalogue.filter((c) => c.shownBy.includes('rehearsed')).map((c) => c.id);
  const have = rehearsals.map((r) => r.id);
  expect([...have].sort()).toEqual([...wanted].sort());
});

it('the table of docs/faults.md has every fault of the catalogue, shown as the catalogue says', () => {
  const page = readFileSync(new URL('../../../docs/faults.md', import.meta.url), 'utf8');
  const rows = new Map(
    page.split('\n').flatMap((line) => {
      const [, id, , shown] = line
        .split(' | ')
        .map((cell) => cell.replace(/^\| /, '').trim())
        .flatMap((c, i) => (i === 0 ? ['', c] : [c]));
      return id && shown ? [[id, shown] as const] : [];
    }),
  );
  for (const { id, shownBy } of catalogue) expect(rows.get(id), id).toBe(shownBy.join(', '));
  expect(rows.size - 1).toBe(catalogue.length);
});

it('a box moved to a window has a colder cool end by night than it had, whatever the heater does', () => {
  const moved = one(enclosure, 'E9');
  expect(moved.skipped).toBe(false);
  const before = one(enclosure, 'W5').rows;
  const coldest = (rows: readonly { readonly coolestC: number }[]) => Math.min(...rows.map((r) => r.coolestC));
  expect(coldest(moved.rows)).toBeLessThan(coldest(before) - 1);
});

it('a door left ajar by night costs warmth: the heater works harder than behind a shut door, and the cool end is colder still', () => {
  const [ajar, shut] = [one(enclosure, 'E2'), one(enclosure, 'W5')];
  expect(ajar.skipped).toBe(false);
  const coldest = (f: FaultFinding) => Math.min(...f.rows.map((r) => r.coolestC));
  const worked = (f: FaultFinding) => f.rows.reduce((sum, r) => sum + r.heaterW, 0) / f.rows.length;
  expect(coldest(ajar)).toBeLessThan(coldest(shut));
  expect(worked(ajar)).toBeGreaterThan(1.02 * worked(shut));
});

describe('on a wooden box with a 150 W emitter', () => {
  it('a heater without a thermostat burns, and sooner than one that is only set too high', () => {
    const none = one(enclosure, 'H1');
    expect(none.first?.line.kind).toBe('burns');
    expect(none.first?.shareFrac).toBe(1);
    expect(none.alarm?.instrument).toBe('basking thermometer');
  });
  it('a second cut-out lowers the worst of a thermostat stuck on, and of a probe that fell out', () => {
    for (const id of ['H2', 'H5']) {
      const guard = one(enclosure, id).guards.find((g) => g.guard === 'cut-out')!;
      expect(guard.worstWith).toBeLessThan(guard.worstWithout - 1);
    }
  });
  it('no power is no power, however it comes about', () => {
    const at = (id: string) => one(enclosure, id).rows.map((r) => r.warmestC);
    const cut = at('H20');
    // The dead heater still stands in its box and the thermostat still asks for it: the same box cools the same way.
    expect(Math.max(...at('H4').map((v, i) => Math.abs(v - cut[i]!)))).toBeLessThan(0.05);
    expect(Math.max(...at('H3').map((v, i) => Math.abs(v - cut[i]!)))).toBeLessThan(0.05);
  });
  it('foam makes a power cut longer, and the card says the same hours as the curve', () => {
    const { powerCut, findings, lines } = played(enclosure, ['H20'], 1);
    const curve = hoursTo(findings[0]!.rows, lines['too-cold'])!;
    expect(powerCut.insulationHours!).toBeGreaterThan(curve * 1.3);
    expect(powerCut.hoursToLine).toEqual({ low: curve, median: curve, high: curve });
    expect(powerCut.after.map((a) => a.hours)).toEqual([1, 3, 6, 12, 24]);
  });
  it('a heat wave leaves no cool place, with the heater off', () => {
    const wave = one(enclosure, 'H19');
    expect(wave.first?.line.kind).toBe('too-hot');
    expect(wave.shows?.atWorst.heaterW).toBe(0);
  });
  it('says what this home cannot have', () => {
    for (const id of ['H13', 'H21']) expect(one(enclosure, id)).toMatchObject({ skipped: true, rank: 0, rows: [] });
  });
});

it('worse and likelier faults come first, and those that cross no line after those that do', () => {
  const { findings } = played(enclosure, ['H1', 'H10', 'H20', 'M6'], 1);
  expect(findings.map((f) => f.id)).toEqual(['H1', 'H20', 'H10', 'M6']);
});

it('a line is crossed between two rows where the straight line says so', () => {
  const line = harmLines(input.climate)['too-cold'];
  const row = (hour: number, warmestC: number) => ({ ...one(enclosure, 'H17').rows[0]!, hour, warmestC });
  expect(hoursTo([row(0, line.at + 3), row(1, line.at + 1), row(2, line.at - 3)], line)).toBeCloseTo(1.25, 9);
  expect(hoursTo([row(0, line.at + 3), row(1, line.at + 1)], line)).toBeNull();
});
