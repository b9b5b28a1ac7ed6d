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
import { nightAimC } from './night-dial.ts';
import { linePlaces, lineQuantities, type MemberSurface, type WattLine } from './surface.ts';

/** Shares of the winter day's power at which the other states are solved; our choice. */
const shares = { lower: 0.6, nightLow: 0.4, nightHigh: 0.85 } as const;
/** Least power that tells two states apart [W]. */
const leastW = 1;
/** A heater that has next to nothing to do is solved this far above it too, so that the line has a slope [W]; our choice. */
const idle = { belowW: 2, spanW: 3 } as const;
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
  const lowW = heldW < idle.belowW ? heldW + idle.spanW : shares.lower * heldW;
  const parts = { model, rest, moments, held, dayW, lowW, nightAimC: nightAimC(climate), near };
  const { day, night, states } = model.enclosure.heaters.length > 1 ? twoHeaters(parts) : oneHeater(parts);
  const summer = seasonLine(parts, day, climate, moments.summerDay, startOf(parts, summerAt, held));
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
    settled: { held, others: [summer.settled, ...states] },
  };
}

type Rest = (conditions: SteadyConditions, start?: SettledBox) => SettledBox;

interface Parts {
  readonly model: BoxModel;
  readonly rest: Rest;
  readonly moments: Moments;
  readonly held: SettledBox;
  readonly dayW: number;
  /** Power of the other state of the day. */
  readonly lowW: number;
  /** Wanted in the warm hide at night. */
  readonly nightAimC: number;
  readonly near: SettledStates | undefined;
}

/** The settled boxes of one version: the winter day held; then the summer day, and the others in the order in which they
 *  are solved. */
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

const summerAt = 0;

interface Lines {
  readonly day: WattLine;
  readonly night: WattLine;
  readonly states: readonly SettledBox[];
}

/** One heater: the same two states serve day and night, moved with the room; the lower one is solved at night. Where sun
 *  warms the winter day, or the night needs much more than the day, each has its own. */
function oneHeater(parts: Parts): Lines {
  const { model, rest, moments, held, dayW, lowW } = parts;
  const night = rest({ ...moments.winterNight, fixedW: [lowW] }, startOf(parts, 1, held));
  const high = valuesOf(model, moments.winterDay, held, 0);
  const nightLow = valuesOf(model, moments.winterNight, night, 0);
  const apart = moments.winterDay.roomC - moments.winterNight.roomC;
  const highW = held.now[0]?.powerW ?? dayW;
  const { roomC } = moments.winterDay;
  const sunny = moments.winterDay.sunWPerM2 > 0;
  const needW = nightNeedW(parts, nightLow, lowW, mostOf(parts, 0));
  if (!sunny && needW <= farBeyond * Math.max(highW, lowW)) {
    return {
      day: { roomC, lowW, highW, low: raised(nightLow, apart), high },
      night: { roomC: moments.winterNight.roomC, lowW, highW, low: nightLow, high: raised(high, -apart) },
      states: [night],
    };
  }
  const below = sunny ? rest({ ...moments.winterDay, fixedW: [lowW] }, startOf(parts, 2, held)) : night;
  const aboveW = Math.max(needW, lowW + idle.spanW);
  const above = rest({ ...moments.winterNight, fixedW: [aboveW] }, startOf(parts, 3, night));
  return {
    day: {
      roomC,
      lowW,
      highW,
      low: sunny ? valuesOf(model, moments.winterDay, below, 0) : raised(nightLow, apart),
      high,
    },
    night: {
      roomC: moments.winterNight.roomC,
      lowW,
      highW: aboveW,
      low: nightLow,
      high: valuesOf(model, moments.winterNight, above, 0),
    },
    states: [night, below, above],
  };
}

/** A night that needs this many times the power of the upper state is solved there too; our choice: a line is straight to
 *  a third of a kelvin as far as that (search.test.ts). */
const farBeyond = 1.3;

const mostOf = ({ model }: Parts, heater: number): number =>
  (model.enclosure.heaters[heater]?.powerW ?? 0) * model.parameters.heaterPower;

/** Power that the night calls for, as far as one state tells: in proportion to the rise over the room, no more than there is. */
function nightNeedW(
  { moments, nightAimC: aimC }: Parts,
  values: readonly number[],
  atW: number,
  mostW: number,
): number {
  const at = (place: (typeof linePlaces)[number]) => values[lineQuantities.indexOf(place)] ?? Number.NaN;
  const { roomC } = moments.winterNight;
  const warmC = Number.isNaN(at('warm-hide')) ? at('warm-air') : at('warm-hide');
  if (aimC <= warmC) return 0;
  return warmC - roomC <= 0.01 ? mostW : Math.min(mostW, (atW * (aimC - roomC)) / (warmC - roomC));
}

/** A lamp by day and another heater by night: each has its own two states. */
function twoHeaters(parts: Parts): Lines {
  const { model, rest, moments, held, dayW, lowW } = parts;
  const mostW = mostOf(parts, 1);
  const scaleW = Math.max(3 * leastW, Math.min(mostW, Math.max(dayW, 5)));
  const below = rest({ ...moments.winterDay, fixedW: [lowW, 0] }, startOf(parts, 1, held));
  const nightAt = (w: number, from: SettledBox) => rest({ ...moments.winterNight, fixedW: [0, w] }, from);
  const nightLowW = shares.nightLow * scaleW;
  const nightBelow = nightAt(nightLowW, startOf(parts, 2, below));
  const nightLow = valuesOf(model, moments.winterNight, nightBelow, 1);
  const nightHighW = Math.max(shares.nightHigh * scaleW, nightNeedW(parts, nightLow, nightLowW, mostW));
  const nightAbove = nightAt(nightHighW, startOf(parts, 3, nightBelow));
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
      lowW: nightLowW,
      highW: nightHighW,
      low: nightLow,
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
