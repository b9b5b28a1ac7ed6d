// Our simulator on the six boxes of an independent zonal model (8 columns by 2 layers of air).
// That model's air was fitted to the same flow solvers as ours, so the two can share an error. No band is stated by it;
// the judged spread of such models before any reading is used. Differences: docs/theory/box-against-others.md.
import { readFileSync } from 'node:fs';
import type { SteadyAnswer } from '../../src/physics/answer.ts';
import type { MaterialTable } from '../../src/physics/material.ts';
import { startState } from '../../src/physics/network.ts';
import { baskingSurface } from '../../src/physics/places.ts';
import { coldRunState, runBox, startTally } from '../../src/physics/run.ts';
import { type BoxModel, buildModel, solveSteady } from '../../src/physics/simulate.ts';
import { loadFacts } from '../../src/records/facts.ts';
import type { CheckRow, Tolerance } from '../check-row.ts';
import { partMeans } from './along-box.ts';
import { type ZonalScenario, zonalEnclosure } from './zonal-enclosure.ts';

interface ZonalBox {
  readonly id: string;
  readonly scenario: ZonalScenario;
  readonly steady: Readonly<Record<string, number | null>>;
  readonly day: {
    readonly mean_watts: number;
    readonly switches: number;
    readonly stats?: Readonly<Record<string, { readonly min: number; readonly max: number; readonly mean: number }>>;
  };
}

interface Compared {
  readonly quantity: string;
  readonly expected: CheckRow['expected'];
  readonly ours: number;
  readonly unit: string;
  readonly tolerance: Tolerance;
}

/** Judged spread of such models before any reading. */
const spread = { meanAirK: 1.2, baskingK: 3, coolAirK: 1.5, wattsRel: 0.2, rhPct: 15 };
const why =
  'No band stated. Judged spread of box models before any reading: mean air 1.2 K, basking floor and ceiling 3 K, air and floor at an end 1.5 K, watts 20 %, humidity 15 points; flow of air and evaporation within a factor of three, the range given for them; switches within a factor of two, our choice.';

const read = (): readonly ZonalBox[] =>
  (JSON.parse(readFileSync(new URL('./zonal-model.json', import.meta.url), 'utf8')) as { boxes: ZonalBox[] }).boxes;

const factorOfThree = (value: number) => ({ low: value / 3, high: value * 3 });

function steadyFigures(box: ZonalBox, model: BoxModel, answer: SteadyAnswer): Compared[] {
  const { scenario, steady } = box;
  const along = { columns: answer.columns, edgeM: model.grid.edgeM, layerZM: model.grid.layerZM };
  const parts = (values: readonly number[]) => partMeans(along, values, scenario.N);
  const [low, high] = [parts(answer.columns.airC[0]!), parts(answer.columns.airC.at(-1)!)];
  const floor = parts(answer.columns.floorC);
  const mean = (v: readonly number[]) => v.reduce((s, x) => s + x, 0) / v.length;
  const [L, D, H] = scenario.size;
  const freshLPerS = (answer.airChangePerH * L * D * H) / 3.6;
  const theirs = (name: string) => steady[name]!;
  const kelvin = (quantity: string, name: string, ours: number, abs: number): Compared => ({
    quantity,
    expected: theirs(name),
    ours,
    unit: '°C',
    tolerance: { abs },
  });
  const points = (quantity: string, name: string, ours: number): Compared => ({
    quantity,
    expected: theirs(name),
    ours,
    unit: '%',
    tolerance: { abs: spread.rhPct },
  });
  const spot = answer.places['basking-spot'];
  return [
    kelvin('basking floor, hottest part', 'basking_floor', Math.max(...floor), spread.baskingK),
    ...(steady.spot_peak === null ? [] : [kelvin('basking spot', 'spot_peak', spot ?? Number.NaN, spread.baskingK)]),
    kelvin('floor, cool end', 'cool_floor', floor.at(-1)!, spread.coolAirK),
    kelvin('lower air, warm end', 'warm_air', low[0]!, spread.coolAirK),
    kelvin('lower air, cool end', 'cool_air', low.at(-1)!, spread.coolAirK),
    kelvin('upper air, warm end', 'warm_air_up', high[0]!, spread.coolAirK),
    kelvin('upper air, cool end', 'cool_air_up', high.at(-1)!, spread.coolAirK),
    kelvin('mean air', 'mean_air', (mean(low) + mean(high)) / 2, spread.meanAirK),
    // under a panel our ceiling counts the panel's own face, theirs does not
    ...(scenario.heater.type === 'panel'
      ? []
      : [kelvin('ceiling, hottest part', 'ceil_max', Math.max(...parts(answer.columns.ceilingC)), spread.baskingK)]),
    points('humidity, warm end', 'RH_warm', answer.warmRhPct),
    points('humidity, cool end', 'RH_cool', answer.coolRhPct),
    {
      quantity: 'watts',
      expected: theirs('watts'),
      ours: answer.heaterW[0]!,
      unit: 'W',
      tolerance: { rel: spread.wattsRel },
    },
    {
      quantity: 'fresh air',
      expected: factorOfThree(theirs('vent_through_lps') + theirs('vent_exchange_lps')),
      ours: freshLPerS,
      unit: 'L/s',
      tolerance: {},
    },
    {
      quantity: 'evaporation',
      expected: factorOfThree(theirs('evap_g_h')),
      ours: answer.evaporationGPerH,
      unit: 'g/h',
      tolerance: {},
    },
  ];
}

/** The box from cold under its switching thermostat, 24 h at 10 s. */
function fromCold(box: ZonalBox, model: BoxModel): Compared[] {
  const { T, RH } = box.scenario.room;
  const room = { lowC: T, highC: T, rhPct: RH, sunPeakWPerM2: 0 };
  const tally = startTally(model);
  let hottest = Number.NEGATIVE_INFINITY;
  runBox(
    model,
    room,
    coldRunState(model, startState(model, T), T, RH),
    0,
    24,
    { stepS: 10, renewS: 300, probeLagS: 60 },
    tally,
    (m) => {
      hottest = Math.max(hottest, baskingSurface(model, m.state.box));
    },
  );
  const watts = tally.heaterJ[0]! / 86400;
  return [
    {
      quantity: 'mean watts of the first day from cold',
      expected: box.day.mean_watts,
      ours: watts,
      unit: 'W',
      tolerance: { rel: spread.wattsRel },
    },
    {
      quantity: 'highest basking floor of the first day from cold',
      expected: box.day.stats!.basking_floor!.max,
      ours: hottest,
      unit: '°C',
      tolerance: { abs: spread.baskingK },
    },
    {
      quantity: 'switches of the first day from cold',
      expected: { low: box.day.switches / 2, high: box.day.switches * 2 },
      ours: tally.switches,
      unit: 'switches',
      tolerance: {},
    },
  ];
}

function rowsOf(box: ZonalBox, materials: MaterialTable): CheckRow[] {
  const enclosure = zonalEnclosure(box.scenario);
  const model = buildModel(enclosure, materials);
  const { T, RH } = box.scenario.room;
  const answer = solveSteady(model, { roomC: T, roomRhPct: RH, sunWPerM2: 0, isDay: true });
  const compared = [...steadyFigures(box, model, answer), ...(box.id.startsWith('17a') ? fromCold(box, model) : [])];
  return compared.map((one) => ({
    id: `ZONAL-${box.id.split('_')[0]!.toUpperCase()}`,
    title: box.id.replaceAll('_', ' '),
    kind: 'cross',
    source: 'ZONAL',
    at: 'steady and day',
    provenance: 'read',
    why,
    ...one,
  }));
}

export async function cases(): Promise<CheckRow[]> {
  const { materials } = loadFacts(new URL('../../data', import.meta.url).pathname).facts;
  return read().flatMap((box) => rowsOf(box, materials));
}
