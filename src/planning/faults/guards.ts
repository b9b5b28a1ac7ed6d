// Would a guard have stopped it? The fault is played again with a second cut-out, with the weakest heater that still holds
// the winter, or with foam round the box. Best-estimate version only; the spread is that of the fault itself.

import { coded, isSaying, type Saying, told } from '../../husbandry/coded.ts';
import type { Enclosure, Thermostat } from '../../physics/enclosure.ts';
import { mainHeater } from '../../physics/grid.ts';
import type { BoxModel } from '../../physics/model.ts';
import type { Parameters } from '../../physics/parameters.ts';
import { readingValue } from '../../physics/reading.ts';
import { roomAt } from '../../physics/room-day.ts';
import type { RunOptions } from '../../physics/run.ts';
import { settleBox } from '../../physics/simulate.ts';
import { cutOutAboveDialK } from '../kit/kit-enclosure.ts';
import { insulated, mainThermostatOf, withHeaters } from './alterations.ts';
import type { GuardFinding } from './fault-answer.ts';
import { type FaultRow, type FaultRunPlan, geometriesOf, runFault } from './fault-run.ts';
import { type HarmLine, readingFor } from './harm-lines.ts';
import type { FaultAims, GuardKind, Rehearsal } from './rehearsals.ts';
import { faultPlan, hoursTo, type RehearseInput, seen, worstRow } from './rehearse.ts';

/** Power in hand of the "fewer watts" guard over what the coldest day needs; our choice. */
const reserve = 1.25;
/** Foam of the "insulation" guard. */
export const foam = { materialId: 'xps', thicknessM: 0.025 } as const;
/** Heat of a real cut-out stays off until this far below [K]. */
const cutOutBandK = 2;

export function guardFindings(
  rehearsal: Rehearsal,
  input: RehearseInput,
  aims: FaultAims,
  best: Parameters,
  line: HarmLine,
  without: readonly FaultRow[],
): GuardFinding[] {
  return rehearsal.guards.flatMap((guard): GuardFinding[] => {
    const made = guarded(guard, rehearsal, input, aims);
    if (!made) return [];
    const rows = seen(rehearsal, runFault(made.plan, geometriesOf(made.plan, input.materials), best));
    const hours = hoursTo(rows, line);
    return [
      {
        guard,
        say: made.say.en,
        told: told(made.say),
        hours,
        stops: hours === null,
        worstWithout: worstValue(without, line),
        worstWith: worstValue(rows, line),
      },
    ];
  });
}

const worstValue = (rows: readonly FaultRow[], line: HarmLine): number => readingFor(line.kind, worstRow(rows, line));

export const guardSayings = coded('guard', {
  cutOut: (dial: string) => `A second cut-out with its own probe beside the first, set to ${dial} °C.`,
  fewerWatts: (watts: string, instead: string) =>
    `A heater of ${watts} W instead of ${instead} W: enough for the coldest day with a quarter in hand.`,
  foam: (thick: string) => `${thick} mm of foam outside on all sides but the front.`,
});

interface Guarded {
  readonly plan: FaultRunPlan;
  readonly say: Saying;
}

function guarded(guard: GuardKind, rehearsal: Rehearsal, input: RehearseInput, aims: FaultAims): Guarded | null {
  const { enclosure } = input;
  if (guard === 'cut-out') {
    const main = mainThermostatOf(enclosure);
    const like = enclosure.thermostats[main];
    const plan = faultPlan(rehearsal, enclosure, aims);
    if (!like || isSaying(plan)) return null;
    const cutC = like.setDayC + cutOutAboveDialK;
    return {
      plan: withCutOut(plan, like, main, cutC),
      say: guardSayings.cutOut(cutC.toFixed(1)),
    };
  }
  if (guard === 'fewer-watts') {
    const i = mainHeater(enclosure);
    const heater = enclosure.heaters[i];
    if (!heater) return null;
    const watts = Math.ceil((heater.powerW * aims.winterDutyFrac * reserve) / 5) * 5;
    if (watts >= heater.powerW * 0.9) return null;
    const duty = Math.min(1, (aims.winterDutyFrac * heater.powerW) / watts);
    const weaker = withHeaters(enclosure, (_, k) => (k === i ? { powerW: watts } : {}));
    if (mainHeater(weaker) !== i) return null;
    const plan = faultPlan(rehearsal, weaker, { ...aims, winterDutyFrac: duty });
    if (isSaying(plan)) return null;
    return {
      plan,
      say: guardSayings.fewerWatts(String(watts), String(heater.powerW)),
    };
  }
  if (!(foam.materialId in input.materials)) return null;
  const plan = faultPlan(rehearsal, insulated(enclosure, foam.materialId, foam.thicknessM), aims);
  return isSaying(plan) ? null : { plan, say: guardSayings.foam(String(foam.thicknessM * 1000)) };
}

/** Cuts the power of the main heater while a probe of the cut-out's own, where the plan has the first one, is too warm.
 *  A thermostat stuck on is cut by the simulation's own cut-out; where it is the probe that errs, the thermostat is made to
 *  read a heat that keeps it off. */
function withCutOut(plan: FaultRunPlan, like: Thermostat, main: number, cutC: number): FaultRunPlan {
  const fitted = (e: Enclosure): Enclosure => ({
    ...e,
    thermostats: [
      ...e.thermostats.map((t, i) => (i === main ? { ...t, cutOutC: cutC } : t)),
      { ...like, id: 'cut-out', cutOutC: null },
    ],
  });
  return {
    ...plan,
    normal: fitted(plan.normal),
    faulty: fitted(plan.faulty),
    options: (model) => {
      const options = plan.options(model);
      return options.stuck ? options : { ...options, probeOverride: cutOverride(options, model, plan, main, cutC) };
    },
  };
}

/** Reading that no thermostat heats at [degC]. */
const keepsOffC = 90;

/** While the heater is on, the cut-out's probe feels its radiation too: taken as that of the heater flat out, which it is
 *  in the faults that need a cut-out. Off, it feels none. */
function cutOverride(
  options: Partial<RunOptions>,
  model: BoxModel,
  plan: FaultRunPlan,
  main: number,
  cutC: number,
): NonNullable<RunOptions['probeOverride']> {
  const own = model.readings.probes[model.enclosure.thermostats.length - 1]!;
  const roomC = roomAt(plan.roomDay, plan.startH);
  const conditions = { roomC, roomRhPct: plan.roomDay.rhPct, sunWPerM2: 0, isDay: true, stuckDuty: 1 };
  const flatOut = settleBox(model, conditions).now;
  const none = model.heaters.map(() => ({ radiatedW: 0, shortWaveW: 0 }));
  let open = false;
  return (t, state, room) => {
    if (t !== main) return options.probeOverride?.(t, state, room) ?? null;
    const reading = readingValue(own, state, open ? none : flatOut);
    open = open ? reading > cutC - cutOutBandK : reading > cutC;
    return open ? keepsOffC : (options.probeOverride?.(t, state, room) ?? null);
  };
}
