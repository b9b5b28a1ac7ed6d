// Does the simulator's thermostat step give the limit cycle, the switching count and the droop that mathematics says?
// One plant throughout: 20 °C room, 0.25 K/W, 60 W, 1800 s. Run at the simulator's 10 s and at 2 s.
// Leaves out the box itself: checks/two-methods/step-size.ts.
import { proportionalDuty } from '../../src/physics/control.ts';
import type { ControlKind, Thermostat } from '../../src/physics/enclosure.ts';
import type { CheckRow, Tolerance } from '../check-row.ts';
import { plantAfter, type RunFigures, runOneNode } from './one-node-run.ts';

const plant = { roomC: 20, risePerWattK: 0.25, powerW: 60, timeConstantS: 1800 };
const hours = 48;

const thermostatOf = (control: ControlKind, bandK: number): Thermostat => ({
  id: 't',
  control,
  probe: { xM: 0, yM: 0, zM: 0, at: 'air' },
  setDayC: 28,
  setNightC: 28,
  bandK,
  ratingW: 100,
  cutOutC: null,
});

const row = (part: Partial<CheckRow> & Pick<CheckRow, 'id' | 'title' | 'quantity' | 'expected' | 'ours' | 'unit'>) => ({
  kind: 'two-methods' as const,
  source: 'OWN',
  at: 'closed form of the first-order plant',
  provenance: 'derived' as const,
  tolerance: { rel: 0.002 },
  why: 'Two parts in a thousand, set before the run: a switching time inside a step is found by a straight line.',
  ...part,
});

/** The on/off limit cycle with a perfect probe. Expected figures: exact exponential, evaluated apart from this program. */
function relayRows(stepS: number): CheckRow[] {
  const run = runOneNode({ plant, thermostat: thermostatOf('on-off', 1), setC: 28, lagS: 1e-6, stepS, hours });
  const expected: readonly [keyof RunFigures, number, string, Tolerance?][] = [
    ['onS', 257.58, 's'],
    ['offS', 225.29, 's'],
    ['periodS', 482.88, 's'],
    ['dutyFrac', 0.53343, '-'],
    ['meanC', 28.0015, '°C', { abs: 0.01 }],
    ['minC', 27.5, '°C', { abs: 0.01 }],
    ['maxC', 28.5, '°C', { abs: 0.01 }],
  ];
  const title = `On/off thermostat of the simulator, 1 K band around 28 °C, steps of ${stepS} s`;
  const rows = expected.map(([quantity, value, unit, tolerance]) =>
    row({
      id: 'P-150',
      title,
      quantity: `simulator ${stepS} s: ${quantity}`,
      expected: value,
      ours: run[quantity],
      unit,
      ...(tolerance ? { tolerance, why: 'A hundredth of a kelvin: a hundredth of the band.' } : {}),
    }),
  );
  const lossW = (run.meanC - plant.roomC) / plant.risePerWattK;
  return [
    ...rows,
    row({
      id: 'P-150',
      title,
      quantity: `simulator ${stepS} s: switches in 24 h`,
      expected: (2 * 86400) / 482.88,
      ours: run.switches,
      unit: 'switches',
      tolerance: { abs: 1 },
      why: 'A whole number.',
    }),
    row({
      id: 'P-150',
      title,
      quantity: `simulator ${stepS} s: duty x watts against the loss at the mean`,
      expected: lossW,
      ours: run.dutyFrac * plant.powerW,
      unit: 'W',
      at: 'energy identity over whole cycles',
    }),
  ];
}

/** The same with a probe of 120 s; expected figures by time-stepping of another program at 0.1 s. */
function lagRows(stepS: number): CheckRow[] {
  const run = runOneNode({ plant, thermostat: thermostatOf('on-off', 1), setC: 28, lagS: 120, stepS, hours });
  const title = `On/off thermostat of the simulator with a probe of 120 s, steps of ${stepS} s`;
  const rows = [
    ['periodS', 915.2, 's'],
    ['minC', 27.028, '°C'],
    ['maxC', 28.916, '°C'],
  ] as const;
  return rows.map(([quantity, expected, unit]) =>
    row({
      id: 'P-152',
      title,
      quantity: `simulator ${stepS} s: ${quantity}`,
      expected,
      ours: run[quantity],
      unit,
      at: 'time-stepping 0.1 s of another program',
      tolerance: unit === 's' ? { rel: 0.002 } : { abs: 0.02 },
      why: 'Two parts in a thousand of the period; two hundredths of a kelvin, the step of the other program.',
    }),
  );
}

/** Droop of a proportional thermostat: duty = 1/2 + (set - T)/band and T = room + K P duty, clipped. */
function droopRows(): CheckRow[] {
  const full = plant.risePerWattK * plant.powerW;
  const cases: readonly [ControlKind, number, number][] = [
    ['pulse', 1, 28],
    ['dimming', 1, 28],
    ['pulse', 4, 30],
    ['dimming', 1, 36],
  ];
  return cases.flatMap(([control, bandK, setC]) => {
    const duty = Math.max(0, Math.min(1, (0.5 + (setC - plant.roomC) / bandK) / (1 + full / bandK)));
    const run = runOneNode({ plant, thermostat: thermostatOf(control, bandK), setC, lagS: 60, stepS: 10, hours });
    const title = `${control} thermostat of the simulator, set ${setC} °C, band ${bandK} K`;
    const why = 'Droop at rest is exact; a millionth for the rounding of the last steps.';
    const part = {
      id: `DROOP-${control}-${setC}-${bandK}`,
      title,
      at: 'duty law and plant solved together',
      tolerance: { rel: 1e-6 },
      why,
    };
    return [
      row({ ...part, quantity: 'duty', expected: duty, ours: run.dutyFrac, unit: '-' }),
      row({
        ...part,
        quantity: 'temperature',
        expected: plant.roomC + full * duty,
        ours: run.endC,
        unit: '°C',
      }),
    ];
  });
}

/** Real pulses: each cycle takes its share from the reading at its start, then power on, then off; plant stepped exactly. */
function realPulses(bandK: number, cycleS: number): { meanC: number; rippleK: number; dutyFrac: number } {
  const thermostat = thermostatOf('pulse', bandK);
  let tempC = 28;
  let duty = 0;
  for (let n = 0; n < 4000; n++) {
    duty = proportionalDuty(thermostat, 28, tempC);
    tempC = plantAfter(plant, plantAfter(plant, tempC, 1, duty * cycleS), 0, (1 - duty) * cycleS);
  }
  const peakC = plantAfter(plant, tempC, 1, duty * cycleS);
  return { meanC: plant.roomC + plant.risePerWattK * plant.powerW * duty, rippleK: peakC - tempC, dutyFrac: duty };
}

/** What the simulator leaves out by treating pulses as their mean power. */
function pulseRows(): CheckRow[] {
  const pulses = realPulses(1, 20);
  const mean = runOneNode({ plant, thermostat: thermostatOf('pulse', 1), setC: 28, lagS: 60, stepS: 10, hours });
  const title = 'Pulses of 20 s, power on and off in the plant, against their mean power';
  return [
    row({
      id: 'P-154',
      title,
      quantity: 'swing by stepping real pulses',
      expected: 0.04152,
      ours: pulses.rippleK,
      unit: 'K',
      at: 'exact formula at a duty of 0.52941',
      tolerance: { rel: 0.005 },
      why: 'The stepped pulses settle at a duty of 0.5325, the formula was evaluated at 0.5294: 0.1 % of the swing; half a per cent allowed.',
    }),
    row({
      id: 'P-154',
      title,
      quantity: 'simulator: mean temperature against that of real pulses',
      expected: pulses.meanC,
      ours: mean.endC,
      unit: '°C',
      at: 'stepping of real pulses',
      tolerance: { abs: 0.0415 },
      why: 'A real pulse thermostat reads at one point of the ripple, the simulator at its mean: at most the swing of P-154.',
    }),
  ];
}

export async function cases(): Promise<CheckRow[]> {
  return [...[2, 10].flatMap(relayRows), ...[2, 10].flatMap(lagRows), ...droopRows(), ...pulseRows()];
}
