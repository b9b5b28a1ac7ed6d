// Solves the states of one version of one arrangement that surface.ts draws its lines through: three settled boxes,
// five where another heater works at night, and one for mid-season where it is not as good as the middle of two days.
// This is the slow part of a search and runs in workers. Leaves out: judging (judge-kit.ts).
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import { stateOn } from '../../physics/network.ts';
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
/** Change of the last round at which a state is settled enough for a line [K]. Our choice: a line is then off by a thousandth
 *  of a kelvin, nowhere by more than a tenth of what it may be off beside the home solved as it stands (solve-task.test.ts). */
export const lineSettledK = 0.01;

/** @param geometry of the arrangement's enclosure: heater 0 the main one, heater 1 the night heater if there is one;
 *    thermostat 0 "main", then "night" if there is one, then spare probes
 *  @param near the states of another version of the same arrangement, to start from
 *  @param settledK change of the last round of each state [K] */
export function solveSurface(
  geometry: BoxGeometry,
  parameters: Parameters,
  moments: Moments,
  climate: ClimateNeeds,
  near?: SettledStates,
  settledK = lineSettledK,
): { readonly surface: MemberSurface; readonly settled: SettledStates } {
  const model = modelFrom(geometry, parameters);
  const rest: Rest = (conditions, start) => settleBox(model, conditions, start, settledK);
  const held = rest(dayHold(model, moments.winterDay, climate), near?.held);
  const heldW = held.now[0]?.powerW ?? 0;
  const dayW = Math.max(leastW, heldW);
  // within a thousandth of its power the heater is flat out
  const mostW = (model.enclosure.heaters[0]?.powerW ?? 0) * parameters.heaterPower;
  const reaches = heldW < mostW * 0.999;
  const parts = { model, rest, moments, held, dayW, near };
  const { day, night, states } = model.enclosure.heaters.length > 1 ? twoHeaters(parts) : oneHeater(parts);
  const after = states.length;
  const summer = seasonLine(parts, day, climate, moments.summerDay, startOf(parts, after, held));
  // between two days on which the heater is neither flat out nor off all is as good as straight (search.test.ts)
  const summerW = summer.settled.now[0]?.powerW ?? 0;
  const straight = reaches && summerW > 0.02 * dayW && summerW < dayW;
  const mid = straight
    ? halfway(day, summer.line, moments.midDay.roomC)
    : seasonLine(parts, day, climate, moments.midDay, held).line;
  return {
    surface: {
      heaterPower: parameters.heaterPower,
      reaches,
      day,
      night,
      summer: summer.line,
      summerNight: inRoom(night, moments.summerNight.roomC),
      mid,
      midNight: inRoom(night, moments.midNight.roomC),
    },
    settled: { held, others: [...states, summer.settled] },
  };
}

type Rest = (conditions: SteadyConditions, start?: SettledBox) => SettledBox;

interface Parts {
  readonly model: BoxModel;
  readonly rest: Rest;
  readonly moments: Moments;
  readonly held: SettledBox;
  readonly dayW: number;
  readonly near: SettledStates | undefined;
}

/** The settled boxes of one version: the winter day held, the others in the order in which they are solved. */
export interface SettledStates {
  readonly held: SettledBox;
  readonly others: readonly SettledBox[];
}

/** Where to start looking for state `which`: as far from this version's day as it lay in the other version. */
function startOf({ held, near }: Parts, which: number, fallback: SettledBox): SettledBox {
  const like = near?.others[which];
  if (!near || !like) return fallback;
  const row = like.state.row.map((v, k) => v + held.state.row[k]! - near.held.state.row[k]!);
  return { ...like, state: stateOn(like.state.layout, row) };
}

interface Lines {
  readonly day: WattLine;
  readonly night: WattLine;
  readonly states: readonly SettledBox[];
}

/** One heater: the same two states serve day and night, moved with the room; the lower one is solved at night. */
function oneHeater(parts: Parts): Lines {
  const { model, rest, moments, held, dayW } = parts;
  const lowW = shares.lower * dayW;
  const night = rest({ ...moments.winterNight, fixedW: [lowW] }, startOf(parts, 0, held));
  const high = valuesOf(model, moments.winterDay, held, 0);
  const low = valuesOf(model, moments.winterNight, night, 0);
  const apart = moments.winterDay.roomC - moments.winterNight.roomC;
  const highW = held.now[0]?.powerW ?? dayW;
  return {
    day: { roomC: moments.winterDay.roomC, lowW, highW, low: raised(low, apart), high },
    night: { roomC: moments.winterNight.roomC, lowW, highW, low, high: raised(high, -apart) },
    states: [night],
  };
}

/** A lamp by day and another heater by night: each has its own two states. */
function twoHeaters(parts: Parts): Lines {
  const { model, rest, moments, held, dayW } = parts;
  const mostW = (model.enclosure.heaters[1]?.powerW ?? 0) * model.parameters.heaterPower;
  const scaleW = Math.max(3 * leastW, Math.min(mostW, Math.max(dayW, 5)));
  const lowW = shares.lower * dayW;
  const below = rest({ ...moments.winterDay, fixedW: [lowW, 0] }, startOf(parts, 0, held));
  const nightAt = (w: number, from: SettledBox) => rest({ ...moments.winterNight, fixedW: [0, w] }, from);
  const nightBelow = nightAt(shares.nightLow * scaleW, startOf(parts, 1, below));
  const nightAbove = nightAt(shares.nightHigh * scaleW, startOf(parts, 2, nightBelow));
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
    states: [below, nightBelow, nightAbove],
  };
}

/** A day of another season with the basking surface held, solved; other powers by the winter day's slopes. */
function seasonLine(
  parts: Parts,
  day: WattLine,
  climate: ClimateNeeds,
  moment: SteadyConditions,
  start: SettledBox,
): { readonly line: WattLine; readonly settled: SettledBox } {
  const { model, rest } = parts;
  const now = rest(dayHold(model, moment, climate), start);
  const values = valuesOf(model, moment, now, 0);
  const line = shifted(day, values, now.now[0]?.powerW ?? 0, moment.roomC);
  return { line, settled: now };
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

/** The line halfway between those of two days on which the basking surface is held. */
const halfway = (day: WattLine, summer: WattLine, roomC: number): WattLine =>
  shifted(
    day,
    day.high.map((v, i) => (v + (summer.high[i] ?? Number.NaN)) / 2),
    (day.highW + summer.highW) / 2,
    roomC,
  );

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
