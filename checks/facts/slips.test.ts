// A change of any value of data/ makes this test fail: every slip has a witness, and every witness a place.
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readRawFacts } from '../../src/records/facts.ts';
import { placesOf } from './leaves.ts';
import { noticedSlips, sharesOf } from './slips.ts';
import { courtOf } from './witnesses.ts';

const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const court = courtOf(raw);
const places = placesOf(raw);
/** The others compare with how things stand now, and are at peace with that by themselves. */
const keptValues: readonly string[] = ['printed', 'page-notes', 'memory-notes', 'frozen'];

describe('values of data/ and their witnesses', () => {
  test('as it is, no witness complains', () => {
    const complaining = places.flatMap((place) =>
      court
        .witnessesOf(place)
        .filter(({ kind, notices }) => keptValues.includes(kind) && notices(place.value))
        .map(({ kind }) => `${place.path}: ${kind}`),
    );
    expect(complaining).toEqual([]);
  }, 120_000);

  test('every slip of every value is noticed (a new value: npm run data:freeze)', () => {
    const noticed = noticedSlips(raw, court);
    const survivors = noticed.filter(({ by }) => by === null);
    expect(survivors.map(({ place, unnoticed }) => `${place.path}: ${place.value} -> ${unnoticed}`)).toEqual([]);
    expect(noticed.length).toBeGreaterThan(5000);
    const all = sharesOf(noticed).find(({ table }) => table === 'all');
    // Frozen values are the weakest: if nearly all stood on them alone, the witnesses would not be read at all.
    expect((all?.by.frozen ?? 0) / (all?.values ?? 1)).toBeLessThan(0.9);
  }, 120_000);

  test('every witness names a value that is there', () => {
    expect(court.orphans(places)).toEqual([]);
  });

  test('without our own old values some slips would go unnoticed: the search is no formality', () => {
    const some = { 'sources.json': raw['sources.json'], 'prey.json': raw['prey.json'] };
    expect(noticedSlips(some, courtOf({ ...raw }, {})).some(({ by }) => by === null)).toBe(true);
  }, 120_000);
});
