import { describe, expect, test } from 'vitest';
import { loadCareFacts } from '../records/animal-facts.ts';
import { type RegisterEntry, registerFaults, registerFields, registerFindings } from './register.ts';
import { entry } from './testing/entry.ts';

const headings = loadCareFacts().facts.register;
const whole: RegisterEntry = {
  speciesId: 'corn',
  sex: 'unknown',
  hatched: 'unknown',
  supplierName: 'A. Supplier',
  originCountry: 'United Kingdom',
  acquiredOn: '2026-01-02',
  bred: 'bred',
};
const photo = entry('photo', '2026-01-02', { photoId: 'p', of: 'whole' });
const missing = (row: RegisterEntry, place: 'england' | 'scotland' | 'germany' = 'england', annex = 'none') =>
  registerFindings(row, [photo], headings, place, annex)
    .filter((finding) => finding.state === 'missing')
    .map((finding) => finding.heading.id);

describe('what is missing', () => {
  test('nothing, when all is there or was asked', () => expect(missing(whole)).toEqual([]));
  test('each needed field alone', () => {
    expect(missing({ ...whole, supplierName: ' ' })).toEqual(['supplier']);
    expect(missing({ ...whole, supplierName: 'unknown' })).toEqual(['supplier']);
    expect(missing({ ...whole, sex: '' })).toEqual(['sex']);
    expect(missing({ ...whole, originCountry: '' })).toEqual(['origin']);
    expect(missing({})).toHaveLength(7);
  });
  test('a hatching day stands in for the day of arrival, as the schedule allows', () => {
    expect(missing({ ...whole, acquiredOn: '', hatched: '2026-01-01' })).toEqual([]);
    expect(missing({ ...whole, acquiredOn: '', hatched: '' })).toEqual(['age', 'arrival']);
  });
  test('papers only for a listed species', () => {
    expect(missing(whole, 'england', 'B')).toEqual(['papers']);
    expect(missing({ ...whole, paperNumber: '12/3' }, 'england', 'B')).toEqual([]);
  });
  test('no photograph, no recognisable advert', () => {
    const found = registerFindings(whole, [], headings, 'england', 'none');
    expect(found.find(({ heading }) => heading.id === 'photo')?.state).toBe('missing');
  });
});

test('each place is told whose law asks', () => {
  const lawOf = (place: 'england' | 'scotland' | 'germany', id: string) =>
    registerFindings(whole, [photo], headings, place, 'none').find(({ heading }) => heading.id === id)?.law?.source ??
    null;
  expect(lawOf('england', 'supplier')).toBe('LAW-SI2018-486');
  expect(lawOf('scotland', 'supplier')).toBe('LAW-SSI2021-84');
  expect(lawOf('england', 'chip')).toBeNull();
  expect(lawOf('scotland', 'chip')).toBe('LAW-SSI2021-84');
  expect(lawOf('germany', 'supplier')).toBeNull();
});

describe('what the register takes', () => {
  test('all known fields of a whole entry', () => expect(registerFaults(whole)).toEqual([]));
  test('all faults at once', () => {
    const faults = registerFaults({ sex: 'girl', hatched: '2026-02-30', colour: 'red', callName: 7 });
    expect(faults.map((fault) => fault.field)).toEqual(['sex', 'hatched', 'colour', 'callName']);
  });
  test('every heading names a field that exists', () => {
    for (const { field, orField } of headings)
      for (const one of [field, orField]) if (one !== undefined) expect(registerFields).toContain(one);
  });
});
