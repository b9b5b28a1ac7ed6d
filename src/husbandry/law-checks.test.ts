import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import { lawChecks, type SaleFacts, saleAnswer, staleRules } from './law-checks.ts';
import { places } from './law-rule.ts';

const { facts } = loadFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const today = '2026-12-01';
const sale: SaleFacts = {
  place: 'england',
  speciesId: 'corn',
  annex: 'none',
  buyerAgeYears: 30,
  guardianConsents: null,
  underTreatment: false,
  vetSaysFit: null,
  papersThere: null,
  bothLicensed: null,
};
const answer = (part: Partial<SaleFacts>, day = today) => saleAnswer(lawChecks(facts.law, { ...sale, ...part }, day));
const finding = (id: string, part: Partial<SaleFacts>, day = today) =>
  lawChecks(facts.law, { ...sale, ...part }, day).find((f) => f.ruleId === id);

describe('law checks', () => {
  test.each<[string, Partial<SaleFacts>, string]>([
    ['a grown-up buys a corn snake in England', {}, 'allowed'],
    ['a buyer of 16', { buyerAgeYears: 16 }, 'allowed'],
    ['a buyer of 15', { buyerAgeYears: 15 }, 'blocked'],
    ['nobody asked the age', { buyerAgeYears: null }, 'ask'],
    ['15 with a guardian in England', { buyerAgeYears: 15, guardianConsents: true }, 'blocked'],
    ['15 with a guardian in Germany', { place: 'germany', buyerAgeYears: 15, guardianConsents: true }, 'allowed'],
    ['15 without a guardian in Germany', { place: 'germany', buyerAgeYears: 15, guardianConsents: false }, 'blocked'],
    ['under treatment in England, even when a vet agrees', { underTreatment: true, vetSaysFit: true }, 'blocked'],
    [
      "under treatment in Scotland with a vet's word",
      { place: 'scotland', underTreatment: true, vetSaysFit: true },
      'allowed',
    ],
    ['under treatment in Scotland without', { place: 'scotland', underTreatment: true }, 'blocked'],
    ['treatment not entered', { underTreatment: null }, 'ask'],
    ['a California kingsnake in England', { speciesId: 'california-kingsnake' }, 'allowed'],
    ['a California kingsnake in Germany', { place: 'germany', speciesId: 'california-kingsnake' }, 'blocked'],
    ['a California kingsnake in the European Union', { place: 'eu', speciesId: 'california-kingsnake' }, 'blocked'],
    ['a royal python with its papers', { speciesId: 'royal', annex: 'B', papersThere: true }, 'allowed'],
    ['a royal python without its papers', { speciesId: 'royal', annex: 'B', papersThere: false }, 'blocked'],
    ['a royal python, papers not entered', { speciesId: 'royal', annex: 'B' }, 'ask'],
    ['a listed boa, Annex A, without its certificate', { speciesId: 'boa', annex: 'A', papersThere: false }, 'blocked'],
    ['any reptile in Belgium needs a look at the list', { place: 'belgium' }, 'ask'],
    [
      'a carpet python in New South Wales between licensed people',
      { place: 'new-south-wales', speciesId: 'carpet', bothLicensed: true },
      'allowed',
    ],
    ['the same without a licence', { place: 'new-south-wales', speciesId: 'carpet', bothLicensed: false }, 'blocked'],
    ['a corn snake in New South Wales', { place: 'new-south-wales', bothLicensed: true }, 'blocked'],
  ])('%s', (_title, part, expected) => {
    expect(answer(part)).toBe(expected);
  });

  test('every place has rules, and every finding its reason, source and date', () => {
    for (const place of places) {
      const found = lawChecks(facts.law, { ...sale, place }, today);
      expect(found.length, place).toBeGreaterThan(0);
      for (const f of found) {
        expect(facts.sources[f.source], f.source).toBeDefined();
        expect(f.reason).not.toBe('');
        expect(f.dateChecked).toMatch(/^\d{4}-\d{2}-\d{2}$/);
        if (f.answer !== 'allowed') expect(f.todo === '' && f.answer === 'ask').toBe(false);
      }
    }
  });

  test('a rule stands until the day of its review and is amber the day after', () => {
    const rule = facts.law.find((r) => r.id === 'gb-under-16-ew')!;
    expect(staleRules([rule], rule.reviewBy)).toEqual([]);
    const after = `${rule.reviewBy.slice(0, 8)}25`;
    expect(staleRules([rule], after)).toEqual([rule]);
    expect(finding(rule.id, {}, rule.reviewBy)).toMatchObject({ answer: 'allowed', stale: false });
    expect(finding(rule.id, {}, after)).toMatchObject({ answer: 'ask', stale: true });
    expect(finding(rule.id, { buyerAgeYears: 15 }, after)).toMatchObject({ answer: 'blocked', stale: true });
  });

  test('no rule at all is not "allowed"', () => {
    expect(saleAnswer([])).toBe('ask');
  });

  test('blocked comes first', () => {
    const found = lawChecks(facts.law, { ...sale, buyerAgeYears: 15, underTreatment: null }, today);
    expect(found.map((f) => f.answer).slice(0, 2)).toEqual(['blocked', 'ask']);
  });
});
