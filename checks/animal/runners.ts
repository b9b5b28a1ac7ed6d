// Ours for the tables about condition, growth and the rules of the animal.
import { addDays } from '../../src/animal/calendar.ts';
import { fitness } from '../../src/animal/fitness.ts';
import { type GrowthCurve, growthBand, lengthAfterCm, ratePerYearFrom } from '../../src/animal/growth.ts';
import { massFinding } from '../../src/animal/mass-series.ts';
import { miteWatch, quarantineState, usualQuarantineDays } from '../../src/animal/quarantine.ts';
import { majorAxis, scaledMassG } from '../../src/animal/scaled-mass-index.ts';
import { fitFor, sizeCheck } from '../../src/animal/size-check.ts';
import { sloughState } from '../../src/animal/slough.ts';
import { entry } from '../../src/animal/testing/entry.ts';
import type { Species } from '../../src/husbandry/fact.ts';
import { allFacts } from '../../src/records/animal-facts.ts';
import { list, num } from '../inputs.ts';
import type { Runner } from '../table.ts';

const { care, facts } = allFacts();
const start = '2026-01-01';
const families = ['Colubridae', 'Pythonidae', 'Natricidae'];

function sized(family: number, svlMm: number, massG: number) {
  const fit = fitFor(care.lengthMass, 'svl', families[family] ?? '');
  if (fit === null) throw new Error('no fit');
  return sizeCheck(fit, svlMm, massG);
}

function bandOf(id: string) {
  const band = growthBand(facts.species[id] as Species, care);
  if (band === null) throw new Error(`no growth of ${id}`);
  return band;
}

/** Growth within a month from a length [cm]. */
const monthly = (curve: GrowthCurve, fromCm: number): number => lengthAfterCm(curve, fromCm, 30.4375) - fromCm;

function soundAnimal() {
  const answers = Object.fromEntries(care.examination.map((step) => [step.id, []]));
  const meal = { preyId: 'mouse-adult', preyMassG: null, count: 1, outcome: 'taken' } as const;
  return [
    ...['2025-12-01', '2025-12-11', '2025-12-21'].map((on) => entry('feeding', on, meal)),
    entry('weighing', '2025-12-20', { massG: 500 }),
    entry('examination', '2025-12-31', { answers, massG: 500, outline: '', note: '' }),
  ];
}

export const animalRuleRunners: Readonly<Record<string, Runner>> = {
  scaledMass: (i) => {
    const masses = list(i, 'massG');
    const animals = list(i, 'lengthMm').map((lengthMm, at) => ({ lengthMm, massG: masses[at] ?? Number.NaN }));
    const axis = majorAxis(animals);
    if (!axis.ok) throw new Error('refused');
    const { exponent, correlation, meanLengthMm } = axis.value;
    const scaled = animals.map(({ lengthMm, massG }) => scaledMassG(massG, lengthMm, meanLengthMm, exponent));
    const meanG = scaled.reduce((a, b) => a + b, 0) / scaled.length;
    return { exponent, correlation, commonMm: meanLengthMm, firstG: scaled[0] ?? 0, fourthG: scaled[3] ?? 0, meanG };
  },
  massRatio: (i) => {
    const massG = num(i, 'massG');
    return { ratio: massG / sized(num(i, 'family'), num(i, 'svlMm'), massG).expectedG };
  },
  expectedMass: (i) => ({ massG: sized(num(i, 'family'), num(i, 'svlMm'), 1).expectedG }),
  royalFirstYear: () => {
    const band = bandOf('royal');
    const ratio = (curve: GrowthCurve): number =>
      (lengthAfterCm(curve, band.hatchlingCm, 365.25) / band.hatchlingCm) ** 3;
    return { slow: ratio(band.slow), fast: ratio(band.fast) };
  },
  royalRate: (i) => ({
    ratePerYear: ratePerYearFrom(
      num(i, 'hatchlingCm'),
      num(i, 'adultCm'),
      num(i, 'maturityFrac'),
      num(i, 'maturityYears'),
    ),
  }),
  kingsnakeDifference: () => {
    const band = bandOf('california-kingsnake');
    const less = (curve: GrowthCurve): number =>
      monthly(curve, curve.adultCm * 0.5) - monthly(curve, curve.adultCm * 0.9);
    return { slow: less(band.slow), fast: less(band.fast) };
  },
  miteWatched: (i) => ({
    watched: Number(
      miteWatch([entry('mites', start, { seen: true, where: '' })], care, addDays(start, num(i, 'days'))).watching,
    ),
  }),
  quarantineMayEnd: (i) => {
    const days = usualQuarantineDays(care, 'Colubridae');
    const body = { step: 'start', why: '', where: '', clearBy: 'time', days, tests: '' } as const;
    return {
      mayEnd: Number(quarantineState([entry('quarantine', start, body)], addDays(start, num(i, 'days'))).mayEnd),
    };
  },
  lossAlarm: (i) => {
    const best = entry('weighing', start, { massG: num(i, 'bestG') });
    const last = entry('weighing', addDays(start, 30), { massG: num(i, 'lastG') });
    return { alarm: Number(massFinding([best, last], care, addDays(start, 30)).verdict === 'fails') };
  },
  sloughUnderWay: (i) => {
    const state = sloughState([entry('slough', start, { stage: 'cloudy' })], care, addDays(start, num(i, 'days')));
    return { underWay: Number(state.state === 'under-way'), overdue: Number(state.overdue) };
  },
  saleHeld: (i) => {
    const step = (on: string, kind: 'start' | 'end') =>
      entry('treatment', on, { step: kind, what: 'x', amount: '', vet: '' });
    const events = [...soundAnimal(), step(start, 'start'), step(addDays(start, 5), 'end')];
    const today = addDays(start, num(i, 'day'));
    const species = facts.species.corn as Species;
    const answer = fitness({
      species,
      events,
      facts: care,
      law: facts.law,
      place: 'england',
      arrivedOn: '2025-06-01',
      today,
    });
    return { held: Number(answer.answer !== 'fit') };
  },
};
