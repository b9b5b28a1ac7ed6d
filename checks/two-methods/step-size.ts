// Does the answer of a whole day depend on the time step, and do its books close? The wooden 1200 box with an emitter of
// 150 W on an on/off thermostat, 10 s (what the program uses) against 2 s, and pulse control at 60 s against 10 s.
// Leaves out the number of columns: src/physics/box-laws.test.ts.
import type { DayAnswer } from '../../src/physics/answer.ts';
import type { ControlKind, Enclosure } from '../../src/physics/enclosure.ts';
import { buildModel, simulateDay } from '../../src/physics/simulate.ts';
import { loadFacts } from '../../src/records/facts.ts';
import { bareEnclosure, heaterOf, panelOf, thermostatOf } from '../box/plain-box.ts';
import type { CheckRow, Tolerance } from '../check-row.ts';

const { facts } = loadFacts(new URL('../../data', import.meta.url).pathname);

const boxWith = (control: ControlKind, bandK: number): Enclosure =>
  bareEnclosure({
    name: 'wood 1200',
    sizeM: [1.2, 0.6, 0.6],
    wall: panelOf('plywood-700', 0.015),
    panels: { front: panelOf('glass', 0.004) },
    gapAreaM2: 0.0006,
    heaters: [
      heaterOf({
        kind: 'ceramic-emitter',
        powerW: 150,
        mount: 'inside',
        xM: 0.24,
        yM: 0.3,
        zM: 0.47,
        thermostatId: 't',
      }),
    ],
    thermostats: [thermostatOf({ control, bandK, setC: 29, probe: { xM: 0.24, yM: 0.57, zM: 0.15, at: 'wall' } })],
    substrate: { materialId: 'bark-chips', depthM: 0.04, wetFrac: 0 },
    roomC: 18,
    roomRhPct: 50,
  });

const room = { lowC: 16, highC: 20, rhPct: 50, sunPeakWPerM2: 0 };
const run = (control: ControlKind, bandK: number, stepS: number): DayAnswer =>
  simulateDay(buildModel(boxWith(control, bandK), facts.materials), room, { stepS, rowS: 60, leadH: 24 });

const meanOf = (a: DayAnswer, place: 'basking-surface' | 'warm-air' | 'cool-air'): number => {
  const all = a.places[place]!;
  return all.reduce((s, v) => s + v, 0) / all.length;
};
const spanOf = (a: DayAnswer): number =>
  Math.max(...a.places['basking-surface']!) - Math.min(...a.places['basking-surface']!);

interface Gap {
  readonly quantity: string;
  readonly ours: number;
  readonly unit: string;
  readonly tolerance: Tolerance;
  readonly why: string;
}

function gaps(coarse: DayAnswer, fine: DayAnswer): Gap[] {
  const energy =
    'Half a per cent of the day, our choice before the first run: a tenth of what a meter in the home would show.';
  const kelvin = 'A tenth of a kelvin: below what any thermometer in a home can tell.';
  return [
    {
      quantity: 'kWh a day, relative',
      ours: coarse.kWhPerDay / fine.kWhPerDay - 1,
      unit: '-',
      tolerance: { abs: 0.005 },
      why: energy,
    },
    ...(['basking-surface', 'warm-air', 'cool-air'] as const).map((place) => ({
      quantity: `mean ${place}`,
      ours: meanOf(coarse, place) - meanOf(fine, place),
      unit: 'K',
      tolerance: { abs: 0.1 },
      why: kelvin,
    })),
    {
      quantity: 'highest minus lowest basking surface',
      ours: spanOf(coarse) - spanOf(fine),
      unit: 'K',
      tolerance: { abs: 0.1 },
      why: kelvin,
    },
  ];
}

const row = (id: string, title: string, gap: Gap): CheckRow => ({
  id,
  title,
  kind: 'self-consistency',
  source: 'OWN',
  at: 'difference between two steps of time',
  provenance: 'derived',
  expected: 0,
  ...gap,
});

const books = (id: string, title: string, a: DayAnswer): CheckRow =>
  row(id, title, {
    quantity: 'heat in minus out minus stored over the day, relative',
    ours: a.balance.relative,
    unit: '-',
    tolerance: { abs: 1e-6 },
    why: 'The scheme conserves heat; only rounding may be left.',
  });

export async function cases(): Promise<CheckRow[]> {
  const onOff = 'Wooden box, on/off, 1 K band: 10 s against 2 s';
  const coarse = run('on-off', 1, 10);
  const fine = run('on-off', 1, 2);
  const pulse = 'Wooden box, pulse, 1 K band: 60 s against 10 s';
  const slow = run('pulse', 1, 60);
  const quick = run('pulse', 1, 10);
  return [
    ...gaps(coarse, fine).map((gap) => row('STEP-ONOFF', onOff, gap)),
    row('STEP-ONOFF', onOff, {
      quantity: 'switches a day, relative',
      ours: coarse.switchesPerDay / fine.switchesPerDay - 1,
      unit: '-',
      tolerance: { abs: 0.02 },
      why: 'Two per cent, our choice before the first run: about two switches of a day.',
    }),
    books('STEP-ONOFF', onOff, coarse),
    ...gaps(slow, quick).map((gap) => row('STEP-PULSE', pulse, gap)),
    books('STEP-PULSE', pulse, slow),
  ];
}
