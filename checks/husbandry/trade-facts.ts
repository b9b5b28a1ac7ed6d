// The facts of the trade against what this program says: every one as "common practice", never as evidence.
import { readFileSync } from 'node:fs';
import type { Facts } from '../../src/husbandry/fact.ts';
import { judgeEnclosure } from '../../src/husbandry/judge-enclosure.ts';
import { matAloneMaxM } from '../../src/husbandry/rules/beginnings.ts';
import { probePlace } from '../../src/husbandry/rules/probe.ts';
import { numberIn, rangeOf, wordOf } from '../../src/husbandry/species-facts.ts';
import { sampleEnclosure as box } from '../../src/husbandry/testing/sample-enclosure.ts';
import type { Enclosure, Heater } from '../../src/physics/enclosure.ts';
import { loadFacts } from '../../src/records/facts.ts';
import type { Verdict } from '../../src/shared/verdict.ts';
import type { CheckRow, KnownDisagreement, Provenance, Tolerance } from '../check-row.ts';

interface TradeFacts {
  readonly source: string;
  readonly at: string;
  readonly provenance: Provenance;
  /** Disagreements that were looked into and stand. */
  readonly known: readonly KnownDisagreement[];
  readonly rows: readonly {
    readonly id: string;
    readonly fact: string;
    readonly quantity: string;
    readonly expected: CheckRow['expected'];
    readonly unit: string;
    readonly tolerance: Tolerance;
    readonly why: string;
  }[];
}

interface ExaminationStep {
  readonly id: string;
  readonly normal: { readonly en: string };
  readonly signs: readonly { readonly id: string; readonly urgency: string; readonly isolate?: boolean }[];
}

const here = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));
export const readTradeFacts = (): TradeFacts => here('./trade-facts.json') as TradeFacts;
const yes = (x: boolean): number => (x ? 1 : 0);

const heater = (part: Partial<Heater>): Enclosure => ({ ...box, heaters: box.heaters.map((h) => ({ ...h, ...part })) });
const hidesAt = (...at: readonly number[]): Enclosure => ({
  ...box,
  hides: at.map((xM) => ({ ...box.hides[0]!, xM })),
});
const young: Enclosure = {
  ...box,
  coverFrac: 0.1,
  animal: { speciesId: 'corn', stage: 'young', totalLengthM: 0.5, massG: null },
};

function meshTub(speciesId: string): Enclosure {
  const wall = { layers: [{ materialId: 'polypropylene', thicknessM: 0.003 }] };
  const panels = {
    front: wall,
    back: wall,
    left: wall,
    right: wall,
    bottom: wall,
    top: { ...wall, meshShareFrac: 0.9 },
  };
  return { ...box, box: { ...box.box, panels }, animal: { speciesId, stage: 'young', totalLengthM: 0.6, massG: null } };
}

const says =
  (facts: Facts) =>
  (id: string, verdict: Verdict, enclosure: Enclosure, speciesId = 'corn'): number =>
    yes(
      judgeEnclosure(enclosure, facts.species[speciesId]!, null, facts).some(
        (n) => n.id === id && n.verdict === verdict,
      ),
    );

/** Everything that is asked about species at once. */
function speciesFigures(facts: Facts): Readonly<Record<string, number>> {
  const species = Object.values(facts.species);
  const basking = species.map((s) => rangeOf(s, 'adult', 'baskingSurfaceC')!);
  const middles = basking.map((range) => (range.low + range.high) / 2);
  const mat = numberIn(facts.care, 'matSurfaceStarterTubC') ?? Number.NaN;
  const starters = species.filter((s) => wordOf(s, 'hatchling', 'starterTub') === 'yes');
  const away = starters.map((s) => {
    const range = rangeOf(s, 'hatchling', 'baskingSurfaceC')!;
    return Math.max(0, range.low - mat, mat - range.high);
  });
  const shareWith = (climate: string, substrate: string): number => {
    const some = species.filter((s) => wordOf(s, 'adult', 'climateKind') === climate);
    return some.filter((s) => s.all.substrates?.values?.includes(substrate)).length / some.length;
  };
  return {
    matSurfaceC: mat,
    farthestFromBaskingK: Math.max(...away),
    highestBaskingC: Math.max(...basking.map((range) => range.high)),
    lowestBaskingMiddleC: Math.min(...middles),
    highestBaskingMiddleC: Math.max(...middles),
    aridWithChipsFrac: shareWith('arid', 'aspen-chips'),
    tropicalWithBarkFrac: shareWith('tropical', 'bark-chips'),
  };
}

function ruleFigures(facts: Facts): Readonly<Record<string, number>> {
  const is = says(facts);
  const mats = heater({ kind: 'heat-mat', mount: 'under-floor', powerW: 12 });
  const onFloor = {
    ...box,
    thermostats: box.thermostats.map((t) => ({ ...t, probe: { xM: 0.3, yM: 0.3, zM: 0.03, at: 'floor' as const } })),
  };
  const planted = { ...box, coverFrac: 0.6, substrate: { materialId: 'loam-leaf-litter', depthM: 0.08, wetFrac: 0.4 } };
  return {
    matAloneMaxM,
    matAloneFails: is('mat-alone', 'fails', mats),
    probeLowM: probePlace.lowM,
    probeHighM: probePlace.highM,
    probeAtBaskingFails: is('probe-place-pulse', 'fails', onFloor),
    noThermostatFails: is('thermostat-emitter', 'fails', heater({ thermostatId: null })),
    onlyCoolHideFails: is('two-hides', 'fails', hidesAt(1.2)),
    onlyWarmHideFails: is('two-hides', 'fails', hidesAt(0.3)),
    bothHidesHold: is('two-hides', 'holds', hidesAt(0.3, 1.2)),
    warmBowlFails: is('bowl-cool-end', 'fails', { ...box, bowl: { xM: 0.3, yM: 0.2, diameterM: 0.25 } }),
    lightAtNightFails: is('night-light-emitter', 'fails', heater({ kind: 'halogen-lamp' })),
    darkAtNightHolds: is('night-light-emitter', 'holds', box),
    bareHeaterFails: is('guard-emitter', 'fails', heater({ guarded: false })),
    meshTubBoaFails: is('lid-humidity', 'fails', meshTub('boa'), 'boa'),
    meshTubRoyalFails: is('lid-humidity', 'fails', meshTub('royal'), 'royal'),
    meshTubRainbowFails: is('lid-humidity', 'fails', meshTub('rainbow'), 'rainbow'),
    bareBoxYoungFails: is('too-bare', 'fails', young),
    coveredBoxYoungHolds: is('too-bare', 'holds', { ...young, coverFrac: 0.5 }),
    noLockFails: is('lock', 'fails', { ...box, lock: 'none' }),
    plantedAdvised: is('planted', 'holds', planted),
  };
}

function tableFigures(facts: Facts): Readonly<Record<string, number>> {
  const life = (kind: 'basking-lamp' | 'halogen-lamp' | 'ceramic-emitter' | 'infrared-projector') =>
    numberIn(facts.heaters[kind]?.facts ?? {}, 'lifeHours') ?? Number.NaN;
  const clean = facts.care.fullCleanDays;
  const caution = (id: string) => facts.cautions.find((c) => c.id === id);
  const help = caution('help-order')?.say ?? '';
  const order = ['enclosure', 'outside care', 'vet'].map((word) => help.indexOf(word));
  const [first = -1, second = -1, third = -1] = order;
  return {
    thermostatKinds: Object.keys(facts.thermostats).length,
    waterDays: numberIn(facts.care, 'waterDays') ?? Number.NaN,
    spotCleanDays: numberIn(facts.care, 'spotCleanDays') ?? Number.NaN,
    fullCleanLowDays: clean?.low ?? Number.NaN,
    fullCleanHighDays: clean?.high ?? Number.NaN,
    spotLifeHours: life('basking-lamp'),
    halogenLifeHours: life('halogen-lamp'),
    ceramicLifeHours: life('ceramic-emitter'),
    projectorLifeHours: life('infrared-projector'),
    vetBeforeShown: yes(
      caution('vet-before')?.shownAt.includes('enquiry') === true && caution('vet-before')?.decides === 'vet',
    ),
    captiveBredSaid: yes(String(facts.care.captiveBredParasites?.value).includes('look all the same')),
    helpOrder: yes(first >= 0 && first < second && second < third),
  };
}

function examinationFigures(steps: readonly ExaminationStep[]): Readonly<Record<string, number>> {
  const step = (id: string) => steps.find((s) => s.id === id);
  const sign = (stepId: string, id: string) => step(stepId)?.signs.find((s) => s.id === id);
  const mites = sign('skin', 'mites');
  const some = [sign('vent', 'vent-smear'), sign('tail', 'tail-rings'), sign('eyes', 'old-spectacle')];
  return {
    signRidge: yes(sign('outline', 'ridge') !== undefined),
    normalGroove: yes(step('outline')?.normal.en.includes('slight groove') === true),
    headSteps: ['mouth', 'tongue', 'breath', 'throat'].filter((id) => (step(id)?.signs.length ?? 0) > 0).length,
    signKink: yes(sign('spine', 'kink') !== undefined),
    mitesStopSale: yes(mites?.isolate === true && mites.urgency !== 'note'),
    ventTailEyeSigns: some.filter((s) => s !== undefined).length,
  };
}

export function tradeRows(facts: Facts, examination: readonly ExaminationStep[]): CheckRow[] {
  const ours = {
    ...speciesFigures(facts),
    ...ruleFigures(facts),
    ...tableFigures(facts),
    ...examinationFigures(examination),
  };
  const { source, at, provenance, rows } = readTradeFacts();
  return rows.map(({ id, fact, quantity, expected, unit, tolerance, why }) => {
    const value = ours[quantity as keyof typeof ours];
    if (value === undefined) throw new Error(`${id}: no "${quantity}"`);
    return {
      id,
      title: fact,
      quantity,
      kind: 'common-practice',
      source,
      at,
      provenance,
      expected,
      ours: value,
      unit,
      tolerance,
      why,
    };
  });
}

export const readExamination = (): readonly ExaminationStep[] =>
  here('../../data/examination.json') as readonly ExaminationStep[];

export async function cases(): Promise<CheckRow[]> {
  return tradeRows(loadFacts(new URL('../../data', import.meta.url).pathname).facts, readExamination());
}
