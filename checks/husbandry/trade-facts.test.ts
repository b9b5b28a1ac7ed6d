import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { factsFrom } from '../../src/husbandry/facts.ts';
import { readRawFacts } from '../../src/records/facts.ts';
import { judge } from '../check-row.ts';
import { readExamination, readTradeFacts, tradeRows } from './trade-facts.ts';

type Draft = ReturnType<typeof JSON.parse>;
const { known } = readTradeFacts();
const { raw } = readRawFacts(fileURLToPath(new URL('../../data', import.meta.url)));
const disagreeing = (changed: Readonly<Record<string, unknown>>) => {
  const rows = tradeRows(factsFrom(changed).facts, readExamination());
  return [...new Set(rows.filter((row) => judge(row, known).verdict === 'disagrees').map((row) => row.id))];
};
function mutant(change: (d: Draft) => void) {
  const draft = structuredClone(raw) as Draft;
  change(draft);
  return disagreeing(draft);
}
const row = (d: Draft, file: string, id: string) => d[file].find((r: { id: string }) => r.id === id);

describe('facts of the trade', () => {
  test('all 24 are looked at', () => {
    const ids = new Set(readTradeFacts().rows.map((r) => r.id));
    expect([...ids]).toEqual(Array.from({ length: 24 }, (_, i) => `TF-${String(i + 1).padStart(2, '0')}`));
  });

  test('this program agrees with them, but for what is listed with its reason', () => {
    expect(disagreeing(raw)).toEqual([]);
  });

  test('what is listed as disagreeing still does', () => {
    const rows = tradeRows(factsFrom(raw).facts, readExamination());
    const standing = rows.filter((row) => judge(row, known).verdict === 'known disagreement');
    expect(standing.map(({ id, quantity }) => ({ id, quantity }))).toEqual(
      known.map(({ id, quantity }) => ({ id, quantity })),
    );
  });

  test.each<[string, string, (d: Draft) => void]>([
    ['TF-01', 'another mat surface', (d) => (d['care.json'].matSurfaceStarterTubC.value = 33)],
    [
      'TF-03',
      'a species that basks at 37',
      (d) => Object.assign(d['species/boa.json'].all.baskingSurfaceC, { low: 35, high: 38 }),
    ],
    ['TF-07', 'water every third day', (d) => (d['care.json'].waterDays.value = 3)],
    ['TF-08', 'no bark for a boa', (d) => (d['species/boa.json'].all.substrates.values = ['paper'])],
    ['TF-09', 'a full clean every ten weeks', (d) => (d['care.json'].fullCleanDays.high = 70)],
    ['TF-10', 'a spot lamp of 900 h', (d) => (row(d, 'heaters.json', 'basking-lamp').lifeHours.value = 900)],
    [
      'TF-11',
      'a halogen lamp that gives no light',
      (d) => (row(d, 'heaters.json', 'halogen-lamp').emitsLight.value = 'no'),
    ],
    [
      'TF-12',
      'an emitter that needs no guard',
      (d) => (row(d, 'heaters.json', 'ceramic-emitter').needsGuard.value = 'no'),
    ],
    [
      'TF-13',
      'a boa of dry country that wants dry air',
      (d) => {
        d['species/boa.json'].all.climateKind.value = 'temperate';
        Object.assign(d['species/boa.json'].all.rhPct, { low: 30, high: 40 });
      },
    ],
    ['TF-16', 'nobody is told about the vet', (d) => (row(d, 'cautions.json', 'vet-before').shownAt = ['pack'])],
    ['TF-22', 'captive-bred animals are waved through', (d) => (d['care.json'].captiveBredParasites.value = 'seldom')],
    [
      'TF-24',
      'the vet comes first',
      (d) => (row(d, 'cautions.json', 'help-order').say = 'vet, outside care, enclosure'),
    ],
  ])('%s notices %s', (id, _title, change) => {
    expect(mutant(change)).toContain(id);
  });
});
