// How does the simulator's own thermostat step behave on a plant whose answer is known in closed form?
// A box of one time constant, stepped exactly, under src/physics/control-step.ts; reports the settled cycle.
// Leaves out everything else of a box.

import { controlStep } from '../../src/physics/control-step.ts';
import type { Thermostat } from '../../src/physics/enclosure.ts';
import type { OneNodePlant } from '../../src/physics/formulas/thermostat-cycle.ts';

export interface OneNodeRun {
  readonly plant: OneNodePlant;
  readonly thermostat: Thermostat;
  readonly setC: number;
  /** Time constant of the probe [s]; a millionth of a second stands for a perfect probe. */
  readonly lagS: number;
  readonly stepS: number;
  readonly hours: number;
}

export interface RunFigures {
  readonly onS: number;
  readonly offS: number;
  readonly periodS: number;
  readonly switches: number;
  readonly dutyFrac: number;
  readonly meanC: number;
  readonly minC: number;
  readonly maxC: number;
  readonly endC: number;
}

interface Step {
  readonly atS: number;
  readonly tempC: number;
  readonly applied: number;
  /** Moment of a switch within the step [s], by the share of the step that had power. */
  readonly switchedS: number | null;
  readonly on: boolean;
}

/** Rest temperature at a duty [degC]. */
const restC = (plant: OneNodePlant, duty: number): number => plant.roomC + plant.risePerWattK * plant.powerW * duty;

/** The plant after some seconds at a constant duty [degC], exact. */
export const plantAfter = (plant: OneNodePlant, tempC: number, duty: number, seconds: number): number =>
  restC(plant, duty) + (tempC - restC(plant, duty)) * Math.exp(-seconds / plant.timeConstantS);

function stepsOf(run: OneNodeRun): Step[] {
  const { plant, thermostat, setC, lagS, stepS } = run;
  let tempC = plant.roomC;
  let probeC = plant.roomC;
  let duty = 1;
  const onOff = thermostat.control === 'on-off';
  // Rise of the lagging reading by the step's end for full power: exact for a plant much slower than the step.
  const rise = plantAfter(plant, plant.roomC, 1, stepS) - plant.roomC;
  let unitRiseK: readonly number[] = [rise];
  const steps: Step[] = [];
  for (let n = 0; n < (run.hours * 3600) / stepS; n++) {
    const from = tempC;
    const was = duty > 0.5;
    const out = controlStep({
      thermostats: [thermostat],
      setC: [setC],
      probeC: [probeC],
      duty: [duty],
      forced: [null],
      unitRiseK,
      stepS,
      lagS,
      settledC: () => [from],
      tryStep: ([d]) => {
        tempC = plantAfter(plant, from, d!, stepS);
        return [tempC];
      },
    });
    const applied = out.applied[0]!;
    probeC = out.probeC[0]!;
    duty = out.next[0]!;
    unitRiseK = out.unitRiseK;
    const switched = onOff && out.switches > 0;
    const share = was ? applied : 1 - applied;
    steps.push({
      atS: (n + 1) * stepS,
      tempC,
      applied,
      switchedS: switched ? (n + share) * stepS : null,
      on: duty > 0.5,
    });
  }
  return steps;
}

/** Figures of the second half of a run; of whole cycles for an on/off thermostat. */
export function runOneNode(run: OneNodeRun): RunFigures {
  const steps = stepsOf(run);
  const late = steps.slice(Math.floor(steps.length / 2));
  const turns = late.filter((s) => s.switchedS !== null);
  const starts = turns.filter((s) => s.on).map((s) => s.switchedS!);
  const [first = 0, last = 0] = [starts[0], starts.at(-1)];
  const cycles = Math.max(0, starts.length - 1);
  const whole = cycles > 0 ? late.filter((s) => s.atS > first && s.atS - run.stepS < last) : late;
  const onS = onTime(turns, first, last) / cycles;
  const periodS = (last - first) / cycles;
  const temps = whole.map((s) => s.tempC);
  const meanOf = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  return {
    onS,
    offS: periodS - onS,
    periodS,
    switches: turns.length,
    dutyFrac: cycles > 0 ? onS / periodS : meanOf(whole.map((s) => s.applied)),
    meanC: meanOf(temps),
    minC: Math.min(...temps),
    maxC: Math.max(...temps),
    endC: steps.at(-1)!.tempC,
  };
}

/** Seconds with power between two moments of switching on. */
function onTime(turns: readonly Step[], first: number, last: number): number {
  let sum = 0;
  let since: number | null = null;
  for (const t of turns) {
    if (t.switchedS! < first || t.switchedS! > last) continue;
    if (t.on) since = t.switchedS;
    else if (since !== null) sum += t.switchedS! - since;
  }
  return sum;
}
