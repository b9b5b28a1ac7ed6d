import { describe, expect, test } from 'vitest';
import type { Species } from '../husbandry/fact.ts';
import { allFacts } from '../records/animal-facts.ts';
import { type TriageCall, triage } from './triage.ts';

const { care, facts } = allFacts();
const corn = facts.species.corn as Species;
const right = { baskingSurfaceC: 31, warmAirC: 28, coolAirC: 23, nightMinC: 20, rhPct: 50 };
const quiet = { hides: 'yes', moved: 'no', slough: 'no', preySize: 'no' } as const;
const call: TriageCall = {
  complaintId: 'not-eating',
  flags: [],
  readings: right,
  answers: quiet,
  days: 3,
  lossPct: null,
};
const ask = (part: Partial<TriageCall>) => triage(care.triage, corn, 'adult', { ...call, ...part }, 10);

describe('who helps first', () => {
  test('everything right: outside care for a stated time', () =>
    expect(ask({})).toMatchObject({ next: 'care', wrong: [], open: [] }));
  test('the enclosure before anything else', () => {
    expect(ask({ readings: { ...right, warmAirC: 26.9 } })).toMatchObject({ next: 'enclosure', wrong: ['warmAirC'] });
    expect(ask({ readings: { ...right, warmAirC: 27 } }).next).toBe('care');
    expect(ask({ answers: { ...quiet, hides: 'no' } })).toMatchObject({ next: 'enclosure', wrong: ['hides'] });
  });
  test('what nobody has read is asked for, not guessed', () => {
    const { warmAirC: _none, ...rest } = right;
    expect(ask({ readings: rest })).toMatchObject({ next: 'ask', open: ['warmAirC'] });
  });
  test('a warm night is not wrong, a cold one is', () => {
    expect(ask({ readings: { ...right, nightMinC: 24 } }).next).toBe('care');
    expect(ask({ readings: { ...right, nightMinC: 17.9 } }).wrong).toEqual(['nightMinC']);
  });
  test('the time for care has an end', () => {
    expect(ask({ days: 28 }).next).toBe('care');
    expect(ask({ days: 29 }).next).toBe('vet-soon');
  });
  test('a tenth of the mass goes before care', () => {
    expect(ask({ lossPct: 9.9 }).next).toBe('care');
    expect(ask({ lossPct: 10 }).next).toBe('vet-soon');
  });
  test('every red flag jumps the queue, whatever the enclosure says', () => {
    for (const flag of care.triage.redFlags)
      expect(ask({ flags: [flag.id], readings: {}, days: 0 }).next, flag.id).toBe(
        flag.urgency === 'vet-now' ? 'vet-now' : 'vet-24h',
      );
  });
  test('nothing is tried at home against mites', () => {
    expect(ask({ complaintId: 'mites', answers: { mitesSeen: 'no', water: 'yes', otherAnimals: 'no' } }).next).toBe(
      'vet-soon',
    );
  });
  test('every complaint can be answered to its end', () => {
    const yes = Object.fromEntries(
      care.triage.questions.map(({ id, wrongWhen }) => [id, wrongWhen === 'yes' ? 'no' : 'yes'] as const),
    );
    for (const complaint of care.triage.complaints)
      expect(['care', 'vet-soon']).toContain(ask({ complaintId: complaint.id, answers: yes, days: 0 }).next);
  });
});
