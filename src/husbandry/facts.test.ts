import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readRawFacts } from '../records/facts.ts';
import { readMarkCounts } from './fact-counts.ts';
import { factsFrom, type RawFacts } from './facts.ts';

const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const copy = (): Record<string, unknown> => structuredClone(raw) as Record<string, unknown>;

/** Faults after one thing in the data was spoilt. */
function spoilt(change: (draft: ReturnType<typeof JSON.parse>) => void) {
  const draft = copy();
  change(draft);
  return factsFrom(draft as RawFacts);
}
const row = (draft: ReturnType<typeof JSON.parse>, file: string, id: string) =>
  draft[file].find((r: { id: string }) => r.id === id);

describe('facts', () => {
  test('the data of the program is sound', () => {
    const { facts, faults } = factsFrom(raw);
    expect(faults).toEqual([]);
    expect(Object.keys(facts.species)).toHaveLength(18);
    expect(Object.keys(facts.heaters)).toHaveLength(6);
    expect(Object.keys(facts.thermostats)).toHaveLength(3);
    expect(facts.law.length).toBeGreaterThan(30);
  });

  test('paths may carry the folder they came from', () => {
    const moved = Object.fromEntries(Object.entries(raw).map(([path, json]) => [`/src/../data/${path}`, json]));
    expect(factsFrom(moved)).toEqual(factsFrom(raw));
  });

  const bad: readonly [string, (d: ReturnType<typeof JSON.parse>) => void, string, string][] = [
    [
      'cork that conducts 65 W/(m K)',
      (d) => (row(d, 'materials.json', 'cork-board').conductivityWPerMK.value = 65),
      'DATA_RANGE',
      'materials.json: cork-board.conductivityWPerMK',
    ],
    [
      'a basking site of 320 °C',
      (d) => (d['species/corn.json'].all.baskingSurfaceC.high = 320),
      'DATA_RANGE',
      'species/corn.json: all.baskingSurfaceC',
    ],
    [
      'a fact without a source',
      (d) => delete d['species/corn.json'].all.rhPct.source,
      'DATA_SOURCE',
      'species/corn.json: all.rhPct',
    ],
    [
      'a source that is not listed',
      (d) => (d['species/corn.json'].all.rhPct.source = 'HEARSAY'),
      'DATA_SOURCE',
      'species/corn.json: all.rhPct',
    ],
    [
      'a fact that does not say how it was come by',
      (d) => delete d['species/corn.json'].all.rhPct.read,
      'DATA_FORM',
      'species/corn.json: all.rhPct',
    ],
    [
      'a number whose key names no unit',
      (d) => (d['species/corn.json'].all.warmth = { value: 3, source: 'COMMON', at: '', read: 'memory' }),
      'DATA_UNIT',
      'species/corn.json: all.warmth',
    ],
    [
      'low above high',
      (d) => Object.assign(d['species/corn.json'].all.rhPct, { low: 70, high: 60 }),
      'DATA_ORDER',
      'species/corn.json: all.rhPct',
    ],
    [
      'a value outside its own range',
      (d) => (row(d, 'heaters.json', 'halogen-lamp').lifeHours.value = 900),
      'DATA_ORDER',
      'heaters.json: halogen-lamp.lifeHours',
    ],
    ['half a range', (d) => delete d['species/corn.json'].all.rhPct.low, 'DATA_FORM', 'species/corn.json: all.rhPct'],
    [
      'words where a unit is named',
      (d) => (d['species/corn.json'].adult.massG = { value: 'heavy', source: 'COMMON', at: '', read: 'memory' }),
      'DATA_FORM',
      'species/corn.json: adult.massG',
    ],
    [
      'unknown without a reason',
      (d) => delete d['species/corn.json'].all.ctMinC.note,
      'DATA_FORM',
      'species/corn.json: all.ctMinC',
    ],
    [
      'a bad alternative',
      (d) => (d['species/corn.json'].all.rhPct.alternatives[0].high = 640),
      'DATA_RANGE',
      'species/corn.json: all.rhPct.alternatives[0]',
    ],
    [
      'a cool end warmer than the warm end',
      (d) => Object.assign(d['species/corn.json'].all.warmAirC, { low: 20, high: 24 }),
      'DATA_ORDER',
      'species/corn.json: all.coolAirC',
    ],
    [
      'a hatchling longer than the adult',
      (d) => Object.assign(d['species/corn.json'].hatchling.totalLengthCm, { low: 200, high: 210 }),
      'DATA_ORDER',
      'species/corn.json: hatchling.totalLengthCm',
    ],
    [
      'an id used twice',
      (d) => d['materials.json'].push(structuredClone(d['materials.json'][0])),
      'DATA_TWICE',
      'materials.json: mdf-400.id',
    ],
    [
      'a substrate that is not in the table',
      (d) => d['species/corn.json'].all.substrates.values.push('moon-dust'),
      'DATA_LINK',
      'species/corn.json: all.substrates',
    ],
    [
      'a standard for a species that is not there',
      (d) => row(d, 'standards.json', 'de-royal').speciesIds.push('dragon'),
      'DATA_LINK',
      'standards.json: de-royal.speciesIds',
    ],
    [
      'a rule that asks for ten body lengths',
      (d) => (row(d, 'standards.json', 'wales-shop').rule.lengthShare = 10),
      'DATA_RANGE',
      'standards.json: wales-shop.rule.lengthShare',
    ],
    [
      'bands out of order',
      (d) => row(d, 'standards.json', 'at-ground').rule.bands.reverse(),
      'DATA_ORDER',
      'standards.json: at-ground.rule.bands[1]',
    ],
    [
      'a law for a place we do not know',
      (d) => (row(d, 'law.json', 'ireland-under-16').places = ['atlantis']),
      'DATA_FORM',
      'law.json: ireland-under-16.places',
    ],
    [
      'a law looked at again before it was looked at',
      (d) => (row(d, 'law.json', 'ireland-under-16').reviewBy = '2020-01-01'),
      'DATA_ORDER',
      'law.json: ireland-under-16.reviewBy',
    ],
    [
      'a caution that nobody decides',
      (d) => (row(d, 'cautions.json', 'rcd').decides = 'us'),
      'DATA_FORM',
      'cautions.json: rcd.decides',
    ],
    [
      'a rehearsed fault that says not how',
      (d) => delete row(d, 'faults.json', 'H2').rehearsal,
      'DATA_FORM',
      'faults.json: H2.rehearsal',
    ],
    [
      'a thermostat silent on a heater',
      (d) => delete row(d, 'thermostats.json', 'pulse').drives['heat-mat'],
      'DATA_FORM',
      'thermostats.json: pulse.drives.heat-mat',
    ],
    ['a source without a title', (d) => delete d['sources.json'].FM2013.title, 'DATA_FORM', 'sources.json: FM2013'],
    [
      "another room's table with an unknown source",
      (d) => (d['priors.json'][0].source = 'HEARSAY'),
      'DATA_SOURCE',
      'priors.json: [mixingAlong]',
    ],
  ];
  test.each(bad)('%s is named', (_title, change, code, field) => {
    const found = spoilt(change).faults.map((fault) => `${fault.code} ${fault.field}`);
    expect(found).toContain(`${code} ${field}`);
  });

  test('a bad row goes, the rest still serves', () => {
    const { facts } = spoilt((d) => {
      row(d, 'materials.json', 'cork-board').conductivityWPerMK.value = 65;
      d['species/corn.json'].all.baskingSurfaceC.high = 320;
    });
    expect(facts.materials['cork-board']).toBeUndefined();
    expect(facts.materials.glass?.conductivityWPerMK).toBe(1);
    expect(facts.species.corn).toBeUndefined();
    expect(Object.keys(facts.species)).toHaveLength(17);
  });

  test('every bad thing is named at once', () => {
    const { faults } = spoilt((d) => {
      row(d, 'materials.json', 'cork-board').conductivityWPerMK.value = 65;
      row(d, 'materials.json', 'cork-board').densityKgPerM3.value = 12000;
      delete d['species/royal.json'].all.rhPct.source;
    });
    expect(faults.map((f) => f.field)).toEqual(
      expect.arrayContaining([
        'materials.json: cork-board.conductivityWPerMK',
        'materials.json: cork-board.densityKgPerM3',
        'species/royal.json: all.rhPct',
      ]),
    );
  });

  test('nothing at all gives no facts and says that the sources are missing', () => {
    const { facts, faults } = factsFrom({});
    expect(facts.species).toEqual({});
    expect(faults.map((f) => f.field)).toEqual(['sources.json']);
  });

  test('what was read and what stands on memory is counted', () => {
    const counts = readMarkCounts({
      'species/a.json': { x: { source: 'A', read: 'page', alternatives: [{ source: 'B', read: 'memory' }] } },
    });
    expect(counts).toEqual({ species: { page: 1, memory: 1, measured: 0 } });
  });
});
