// What will this very box do on the coldest night and the hottest day? Each possible box that agrees with the readings
// is solved at those moments; median and 90 % interval of every place. Instrument errors are not part of the truth.
import { modelFrom, type SettledBox, settleBox } from '../../physics/simulate.ts';
import { steadyAnswer } from '../../physics/steady-answer.ts';
import { type Spread, spreadOf } from '../../shared/interval.ts';
import { type LogPlace, logPlaces } from '../reading-log.ts';
import { type Draw, drawBoxes } from './draws.ts';
import type { Fit } from './fit.ts';
import type { ForecastMoment, MomentId } from './moments.ts';
import { parametersAt } from './unknowns.ts';

export type InsidePlace = Exclude<LogPlace, 'room'>;
export const insidePlaces = logPlaces.filter((p): p is InsidePlace => p !== 'room');

export interface MomentForecast {
  readonly moment: ForecastMoment;
  /** One value for each possible box [degC]; a place the box does not have is left out. */
  readonly valuesC: Readonly<Partial<Record<InsidePlace, readonly number[]>>>;
  readonly spreadC: Readonly<Partial<Record<InsidePlace, Spread>>>;
  readonly hottestReachableC: readonly number[];
  readonly coolRhPct: readonly number[];
  readonly powerW: readonly number[];
  /** Share of possible boxes whose heaters run flat out. */
  readonly flatOutShare: number;
  /** How far the room lies outside the rooms that were read [K]. */
  readonly awayK: number;
}

export interface Forecast {
  readonly moments: Readonly<Record<MomentId, MomentForecast>>;
  readonly draws: readonly Draw[];
  readonly settled: readonly SettledBox[];
}

/** Usual number of possible boxes: our choice, ends of a 90 % interval steady to about a tenth of its width. */
export const usualDraws = 48;

/** Forecast at the given moments. */
export function forecastBox(fit: Fit, moments: readonly ForecastMoment[], draws = usualDraws, seed = 1): Forecast {
  const { plan } = fit.input;
  const boxes = drawBoxes(fit, draws, seed);
  const models = boxes.map((b) => modelFrom(plan.geometry, parametersAt(plan.unknowns, b.scores)));
  let settled: SettledBox[] = [];
  const found = moments.map((moment): MomentForecast => {
    const awayK = distanceFrom(fit, moment);
    const valuesC: Partial<Record<InsidePlace, number[]>> = {};
    const hottestReachableC: number[] = [];
    const coolRhPct: number[] = [];
    const powerW: number[] = [];
    let flat = 0;
    let warm: SettledBox | undefined;
    const here = boxes.map((box, i) => {
      const conditions = moment;
      const state = settleBox(models[i]!, conditions, warm);
      warm ??= state;
      const answer = steadyAnswer(models[i]!, conditions, state);
      const truth = (place: InsidePlace, modelled: number) =>
        box.truth('tempC', place, moment.isDay, modelled, moment.roomC, awayK);
      for (const place of insidePlaces) {
        const modelled = answer.places[place];
        if (modelled === null) continue;
        valuesC[place] ??= [];
        valuesC[place].push(truth(place, modelled));
      }
      const spot = answer.places['hottest-reachable']!;
      hottestReachableC.push(truth('basking-surface', spot));
      coolRhPct.push(
        Math.max(0, Math.min(100, box.truth('rhPct', 'cool-air', moment.isDay, answer.coolRhPct, moment.roomC, awayK))),
      );
      powerW.push(
        box.truth(
          'powerW',
          'basking-surface',
          moment.isDay,
          answer.heaterW.reduce((s, w) => s + w, 0),
          moment.roomC,
          awayK,
        ),
      );
      if (answer.dutyFrac > 0.98) flat++;
      return state;
    });
    settled = here;
    const spreadC = Object.fromEntries(Object.entries(valuesC).map(([p, v]) => [p, spreadOf(v)]));
    return { moment, valuesC, spreadC, hottestReachableC, coolRhPct, powerW, flatOutShare: flat / boxes.length, awayK };
  });
  const byId = Object.fromEntries(found.map((f) => [f.moment.id, f])) as Record<MomentId, MomentForecast>;
  return { moments: byId, draws: boxes, settled };
}

/** How far a moment's room lies beyond the rooms at which this period was read [K]. */
function distanceFrom(fit: Fit, moment: ForecastMoment): number {
  const rooms = fit.input.observations.filter((o) => o.isDay === moment.isDay).map((o) => o.roomC);
  if (rooms.length === 0) return Math.max(5, ...fit.input.observations.map((o) => Math.abs(o.roomC - moment.roomC)));
  return Math.max(0, Math.min(...rooms) - moment.roomC, moment.roomC - Math.max(...rooms));
}
