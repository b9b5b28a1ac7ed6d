// Where should the dial stand for the basking temperature that this animal wants? For each possible box: the setting at
// which its basking surface comes out right on the coldest day. Leaves out night set points.
import { mainHeater } from '../../physics/grid.ts';
import { modelFrom, settleBox } from '../../physics/simulate.ts';
import { mainThermostat } from '../../physics/steady.ts';
import { dialForReading, meanBandK } from '../../planning/dial/dial-setting.ts';
import { type Spread, spreadOf } from '../../shared/interval.ts';
import type { Fit } from './fit.ts';
import type { Forecast } from './forecast.ts';
import { parametersAt } from './unknowns.ts';

export interface ProvenDial {
  readonly thermostatId: string;
  readonly nowC: number;
  readonly adviceC: Spread;
  readonly aimC: number;
  /** Share of possible boxes whose heater cannot reach the aim. */
  readonly tooWeakShare: number;
}

/** Boxes tried for the dial; fewer than for the forecast, a dial is read to half a degree. */
const dialBoxes = 16;

/** Advice for the thermostat of the basking site; null when there is none. @param aimC wanted basking surface [degC] */
export function dialFor(fit: Fit, forecast: Forecast, aimC: number): ProvenDial | null {
  const { plan } = fit.input;
  const thermostats = plan.geometry.enclosure.thermostats;
  const { moment, awayK } = forecast.moments['coldest-day'];
  const dials: number[] = [];
  let main = -1;
  let weak = 0;
  const boxes = forecast.draws.slice(0, dialBoxes);
  for (const box of boxes) {
    const model = modelFrom(plan.geometry, parametersAt(plan.unknowns, box.scores));
    main = mainThermostat(model);
    if (main < 0) return null;
    // the simulator's value at which the true surface stands at the aim
    const off = box.truth('tempC', 'basking-surface', true, aimC, moment.roomC, awayK) - aimC;
    const held = settleBox(model, { ...moment, holdBaskingC: aimC - off });
    const dutyFrac = held.now.map(
      (h, i) => h.powerW / (plan.geometry.enclosure.heaters[i]!.powerW * model.parameters.heaterPower),
    );
    if (dutyFrac.every((d) => d >= 0.98)) weak++;
    else
      dials.push(
        dialForReading(
          meanBandK(thermostats[main]!),
          held.probeC[main]!,
          dutyFrac[mainHeater(plan.geometry.enclosure)]!,
        ),
      );
  }
  const t = thermostats[main]!;
  return { thermostatId: t.id, nowC: t.setDayC, adviceC: spreadOf(dials), aimC, tooWeakShare: weak / boxes.length };
}
