// One step of time under thermostats: tried as things stand, and tried again with the right share of power when a probe
// crosses a threshold within the step, or at the power at which a proportional thermostat and its probe agree.
// Knows nothing of boxes: the plant is handed in, so that the very same code is checked against closed forms (P-150..P-154).
import { crossing, laggedReading, offAbove, onBelow, proportionalDuty } from './control.ts';
import type { Thermostat } from './enclosure.ts';

export interface ControlledStep {
  readonly thermostats: readonly Thermostat[];
  readonly setC: readonly number[];
  /** Readings and duties at the start of the step. */
  readonly probeC: readonly number[];
  readonly duty: readonly number[];
  /** Duty that a fault or an open cut-out forces, else null. */
  readonly forced: readonly (number | null)[];
  /** Rise of the reading by the step's end from no to full power [K], for the proportional kinds. */
  readonly unitRiseK: readonly number[];
  readonly stepS: number;
  readonly lagS: number;
  /** What the probes would settle to at the start of the step [degC]; asked once it has been tried, which may have told. */
  readonly settledC: () => readonly number[];
  /** Try the step at these duties and say what the probes would settle to at its end [degC]. */
  readonly tryStep: (duty: readonly number[]) => readonly number[];
}

export interface ControlOutcome {
  /** Mean duty during the step, for the heat. */
  readonly applied: readonly number[];
  /** Duty (on/off: 0 or 1) to go on with. */
  readonly next: readonly number[];
  readonly probeC: readonly number[];
  readonly switches: number;
  /** Rise of each reading from no to full power as seen between the two tries; as given where there was one [K]. */
  readonly unitRiseK: readonly number[];
}

export function controlStep(step: ControlledStep): ControlOutcome {
  const { thermostats, setC, forced } = step;
  const first = firstDuties(step);
  const firstEndC = step.tryStep(first);
  const settledC = step.settledC();
  const firstC = readingsAfter(step, settledC, firstEndC);
  let applied: readonly number[] = first;
  let next = first;
  let switches = 0;
  for (let i = 0; i < thermostats.length; i++) {
    const t = thermostats[i]!;
    const onOff = t.control === 'on-off';
    if (forced[i] !== null) {
      if (onOff) next = withOne(next, i, step.duty[i]!);
      continue;
    }
    const change = onOff
      ? switchWithin(t, setC[i]!, step, i, firstC[i]!)
      : agreeWith(t, setC[i]!, step, i, first[i]!, firstC[i]!);
    if (!change) continue;
    applied = withOne(applied, i, change.applied);
    next = withOne(next, i, change.next);
    switches += change.switched ? 1 : 0;
  }
  if (applied === first) return { applied, next, probeC: firstC, switches, unitRiseK: step.unitRiseK };
  const probeC = readingsAfter(step, settledC, step.tryStep(applied));
  const unitRiseK = step.unitRiseK.map((rise, i) => {
    const change = applied[i]! - first[i]!;
    return Math.abs(change) > 0.01 ? Math.max(0, (probeC[i]! - firstC[i]!) / change) : rise;
  });
  return { applied, next, probeC, switches, unitRiseK };
}

/** Duties as things stand at the start of the step. */
function firstDuties({ thermostats, setC, probeC, duty, forced }: ControlledStep): readonly number[] {
  const duties: number[] = [];
  for (let i = 0; i < thermostats.length; i++) {
    const t = thermostats[i]!;
    duties.push(forced[i] ?? (t.control === 'on-off' ? duty[i]! : proportionalDuty(t, setC[i]!, probeC[i]!)));
  }
  return duties;
}

/** What the probes read after the step, from where they would have settled at its start and its end. */
function readingsAfter(
  { probeC, stepS, lagS }: ControlledStep,
  startC: readonly number[],
  endC: readonly number[],
): readonly number[] {
  const readings: number[] = [];
  for (let i = 0; i < endC.length; i++) readings.push(laggedReading(probeC[i]!, startC[i]!, endC[i]!, stepS, lagS));
  return readings;
}

const withOne = (list: readonly number[], at: number, value: number): readonly number[] =>
  list.map((v, i) => (i === at ? value : v));

interface Change {
  readonly applied: number;
  readonly next: number;
  readonly switched: boolean;
}

/** An on/off thermostat whose probe crosses its threshold: power only until then, or only from then on. */
function switchWithin(t: Thermostat, setC: number, step: ControlledStep, i: number, afterC: number): Change | null {
  const on = step.duty[i]! > 0.5;
  const before = step.probeC[i]!;
  const at = crossing(before, afterC, on ? offAbove(t, setC) : onBelow(t, setC), on);
  const late = on ? before >= offAbove(t, setC) : before <= onBelow(t, setC);
  if (at === null && !late) return null;
  const share = late ? 0 : at!;
  return { applied: on ? share : 1 - share, next: on ? 0 : 1, switched: true };
}

/** Power at which a proportional thermostat and the reading it leads to agree at the step's end. */
function agreeWith(
  t: Thermostat,
  setC: number,
  step: ControlledStep,
  i: number,
  duty: number,
  afterC: number,
): Change | null {
  const rise = step.unitRiseK[i]!;
  const band = Math.max(t.bandK, 0.05);
  const free = afterC - duty * rise;
  const agreed = Math.max(0, Math.min(1, (0.5 + (setC - free) / band) / (1 + rise / band)));
  return Math.abs(agreed - duty) > 1e-4 ? { applied: agreed, next: agreed, switched: false } : null;
}
