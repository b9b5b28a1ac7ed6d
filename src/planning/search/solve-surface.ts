// Solves the states of one version of one arrangement that surface.ts draws its lines through: three settled boxes,
// five where another heater works at night.
// This is the slow part of a search and runs in workers. Leaves out: judging (judge-kit.ts).
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Parameters } from '../../physics/parameters.ts';
import {
  type BoxGeometry,
  type BoxModel,
  modelFrom,
  type SettledBox,
  type SteadyConditions,
  settleBox,
} from '../../physics/simulate.ts';
import { steadyAnswer } from '../../physics/steady-answer.ts';
import { restDialC } from '../kit/kit-enclosure.ts';
import { baskingAimC, type Moments } from '../member.ts';
import { linePlaces, lineQuantities, type MemberSurface, type WattLine } from './surface.ts';

/** Shares of the winter day's power at which the other states are solved; our choice. */
const shares = { lower: 0.6, nightLow: 0.4, nightHigh: 0.85 } as const;
/** Least power that tells two states apart [W]. */
const leastW = 1;

/** @param geometry of the arrangement's enclosure: heater 0 the main one, heater 1 the night heater if there is one;
 *    thermostat 0 "main", then "night" if there is one, then spare probes
 *  @param warm a nearby solution to start from */
export function solveSurface(
  geometry: BoxGeometry,
  parameters: Parameters,
  moments: Moments,
  climate: ClimateNeeds,
  warm?: SettledBox,
): { readonly surface: MemberSurface; readonly settled: SettledBox } {
  const model = modelFrom(geometry, parameters);
  const held = settleBox(model, dayHold(model, moments.winterDay, climate), warm);
  const heldW = held.now[0]?.powerW ?? 0;
  const dayW = Math.max(leastW, heldW);
  // within a thousandth of its power the heater is flat out
  const mostW = (model.enclosure.heaters[0]?.powerW ?? 0) * parameters.heaterPower;
  const reaches = heldW < mostW * 0.999;
  const parts = { model, moments, held, dayW };
  const { day, night } = model.enclosure.heaters.length > 1 ? twoHeaters(parts) : oneHeater(parts);
  const summer = summerLine(parts, day, climate);
  const warmer = moments.summerNight.roomC;
  return {
    surface: { heaterPower: parameters.heaterPower, reaches, day, night, summer, summerNight: inRoom(night, warmer) },
    settled: held,
  };
}

interface Parts {
  readonly model: BoxModel;
  readonly moments: Moments;
  readonly held: SettledBox;
  readonly dayW: number;
}

/** One heater: the same two states serve day and night, moved with the room; the lower one is solved at night. */
function oneHeater({ model, moments, held, dayW }: Parts): { day: WattLine; night: WattLine } {
  const lowW = shares.lower * dayW;
  const night = settleBox(model, { ...moments.winterNight, fixedW: [lowW] }, held);
  const high = valuesOf(model, moments.winterDay, held, 0);
  const low = valuesOf(model, moments.winterNight, night, 0);
  const apart = moments.winterDay.roomC - moments.winterNight.roomC;
  const highW = held.now[0]?.powerW ?? dayW;
  return {
    day: { roomC: moments.winterDay.roomC, lowW, highW, low: raised(low, apart), high },
    night: { roomC: moments.winterNight.roomC, lowW, highW, low, high: raised(high, -apart) },
  };
}

/** A lamp by day and another heater by night: each has its own two states. */
function twoHeaters({ model, moments, held, dayW }: Parts): { day: WattLine; night: WattLine } {
  const mostW = (model.enclosure.heaters[1]?.powerW ?? 0) * model.parameters.heaterPower;
  const scaleW = Math.max(3 * leastW, Math.min(mostW, Math.max(dayW, 5)));
  const lowW = shares.lower * dayW;
  const below = settleBox(model, { ...moments.winterDay, fixedW: [lowW, 0] }, held);
  const nightAt = (w: number, from: SettledBox) => settleBox(model, { ...moments.winterNight, fixedW: [0, w] }, from);
  const nightBelow = nightAt(shares.nightLow * scaleW, below);
  const nightAbove = nightAt(shares.nightHigh * scaleW, nightBelow);
  return {
    day: {
      roomC: moments.winterDay.roomC,
      lowW,
      highW: held.now[0]?.powerW ?? dayW,
      low: valuesOf(model, moments.winterDay, below, 0),
      high: valuesOf(model, moments.winterDay, held, 0),
    },
    night: {
      roomC: moments.winterNight.roomC,
      lowW: shares.nightLow * scaleW,
      highW: shares.nightHigh * scaleW,
      low: valuesOf(model, moments.winterNight, nightBelow, 1),
      high: valuesOf(model, moments.winterNight, nightAbove, 1),
    },
  };
}

/** The hottest day with the basking surface held, solved; other powers by the winter day's slopes. */
function summerLine({ model, moments, held }: Parts, day: WattLine, climate: ClimateNeeds): WattLine {
  const now = settleBox(model, dayHold(model, moments.summerDay, climate), held);
  const values = valuesOf(model, moments.summerDay, now, 0);
  return shifted(day, values, now.now[0]?.powerW ?? 0, moments.summerDay.roomC);
}

const dayHold = (model: BoxModel, moment: SteadyConditions, climate: ClimateNeeds): SteadyConditions => ({
  ...moment,
  holdBaskingC: baskingAimC(climate),
  // a night heater of its own stands by in the day
  setC: model.enclosure.thermostats.map((t, i) => (i === 0 ? t.setDayC : restDialC(climate))),
});

function valuesOf(model: BoxModel, c: SteadyConditions, settled: SettledBox, thermostat: number): number[] {
  const a = steadyAnswer(model, c, settled);
  const spare = model.enclosure.heaters.length > 1 ? 2 : 1;
  const extras: Readonly<Record<string, number>> = {
    coolRhPct: a.coolRhPct,
    glassDewMarginK: a.glassDewMarginK,
    evaporationGPerH: a.evaporationGPerH,
    probeC: settled.probeC[thermostat] ?? Number.NaN,
    otherProbe0C: settled.probeC[spare] ?? Number.NaN,
    otherProbe1C: settled.probeC[spare + 1] ?? Number.NaN,
  };
  return lineQuantities.map((q) =>
    (linePlaces as readonly string[]).includes(q)
      ? (a.places[q as (typeof linePlaces)[number]] ?? Number.NaN)
      : (extras[q] ?? Number.NaN),
  );
}

/** A line through one known state with the slopes of another line; humidity is taken as it is, whatever the watts. */
function shifted(like: WattLine, values: readonly number[], powerW: number, roomC: number): WattLine {
  const span = like.highW - like.lowW;
  const low = values.map((v, i) => {
    const rise = (like.high[i] ?? Number.NaN) - (like.low[i] ?? Number.NaN);
    return levels.includes(lineQuantities[i] ?? '') ? v : v - rise;
  });
  return { roomC, lowW: powerW - span, highW: powerW, low, high: values };
}

const levels: readonly string[] = ['coolRhPct', 'glassDewMarginK', 'evaporationGPerH'];

/** Temperatures raised with the room; humidity, dew and water left as they are. */
const raised = (values: readonly number[], kelvin: number): number[] =>
  values.map((v, i) => (levels.includes(lineQuantities[i] ?? '') ? v : v + kelvin));

/** The same powers in another room. */
const inRoom = (line: WattLine, roomC: number): WattLine => ({
  ...line,
  roomC,
  low: raised(line.low, roomC - line.roomC),
  high: raised(line.high, roomC - line.roomC),
});
