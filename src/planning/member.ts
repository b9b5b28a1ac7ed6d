// One possible version of the box through the moments that decide a plan: the coldest night, the winter day, the hottest day,
// and the day and night halfway between them (docs/decisions/0069); where the heater is flat out in the cold also the day and
// night on which it comes off its stop (docs/decisions/0076).
// When the keeper has a thermometer at the basking site and a thermostat to trim, each version is judged at the dial that
// this keeper would end up with; otherwise at the set points as they stand.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import type { SteadyAnswer } from '../physics/answer.ts';
import type { Enclosure, RoomDay } from '../physics/enclosure.ts';
import { mainHeater } from '../physics/grid.ts';
import { isDayAt, roomAt, sunAt } from '../physics/room-day.ts';
import { type BoxModel, type SettledBox, type SteadyConditions, settleBox } from '../physics/simulate.ts';
import { mainThermostat } from '../physics/steady.ts';
import { steadyAnswer } from '../physics/steady-answer.ts';
import { dialForReading, meanBandK, mostDialC } from './dial/dial-setting.ts';
import { between, type SeasonPoint, turningPoints } from './turning-point.ts';
import { type DriesGPerDay, driesGPerDay, sprayedGPerDay } from './wet-floor.ts';

export interface Moments {
  readonly winterNight: SteadyConditions;
  readonly winterDay: SteadyConditions;
  readonly summerDay: SteadyConditions;
  readonly summerNight: SteadyConditions;
  /** Mid-season: halfway between the two days, and between the two nights. */
  readonly midDay: SteadyConditions;
  readonly midNight: SteadyConditions;
}

export interface MemberAnswer {
  readonly winterNight: SteadyAnswer;
  readonly winterDay: SteadyAnswer;
  readonly summerDay: SteadyAnswer;
  readonly summerNight: SteadyAnswer;
  readonly midDay: SteadyAnswer;
  readonly midNight: SteadyAnswer;
  /** Between those, where the heater comes off its stop, the hottest for a surface in reach; null where it does not. */
  readonly turnDay: SteadyAnswer | null;
  readonly turnNight: SteadyAnswer | null;
  /** Winter day with the heater flat out: what the kit can reach. */
  readonly flatOutBaskingC: number;
  /** The same moments as the dial stands, before any trimming (the same objects when nothing is trimmed). */
  readonly untrimmedDay: SteadyAnswer;
  /** Dial that gives the wanted basking surface on the winter day; null when there is nothing to trim or no dial reaches it. */
  readonly trimmedDialC: number | null;
  /** What a floor wet all over dries; null where nobody sprays. */
  readonly dries: DriesGPerDay | null;
  readonly settled: SettledBox;
}

/** Hours after the day period starts at which the box is taken as settled; our choice. */
const warmUpH = 2;

/** The moments at which a plan is judged. Winter day: the coldest room hour of the day period once warmed up. */
export function momentsOf(enclosure: Enclosure): Moments {
  const { winter, summer } = enclosure.room;
  const at = (day: RoomDay, hour: number, isDay: boolean): SteadyConditions => ({
    roomC: roomAt(day, hour),
    roomRhPct: day.rhPct,
    sunWPerM2: isDay ? sunAt(day, hour) : 0,
    isDay,
  });
  const winterNight = at(winter, extremeHour(enclosure, winter, false, -1), false);
  const winterDay = at(winter, extremeHour(enclosure, winter, true, -1), true);
  const summerDay = at(summer, extremeHour(enclosure, summer, true, 1), true);
  const summerNight = at(summer, extremeHour(enclosure, summer, false, 1), false);
  return {
    winterNight,
    winterDay,
    summerDay,
    summerNight,
    midDay: between(winterDay, summerDay, midFrac),
    midNight: between(winterNight, summerNight, midFrac),
  };
}

/** Halfway; our choice of what mid-season is. */
const midFrac = 0.5;

/** Hour of the coldest (-1) or hottest (+1) room within the day or night period; sun counts as 1 K per 20 W/m2 for the choice. */
function extremeHour(enclosure: Enclosure, day: RoomDay, isDay: boolean, sign: 1 | -1): number {
  let best = isDay ? 12 : 3;
  let most = Number.NEGATIVE_INFINITY;
  for (let h = 0; h < 24; h += 0.5) {
    if (isDayAt(enclosure.day, h) !== isDay) continue;
    if (isDay && sign < 0 && !isDayAt(enclosure.day, h - warmUpH)) continue;
    const warmth = sign * (roomAt(day, h) + (sign > 0 ? sunAt(day, h) / 20 : 0));
    if (warmth > most + 1e-9) {
      most = warmth;
      best = h;
    }
  }
  return best;
}

/** Whether the keeper can trim: a thermometer at the basking site and a thermostat on the heater that warms it. */
export function keeperTrims(enclosure: Enclosure): boolean {
  const main = mainHeater(enclosure);
  const statted = main >= 0 && enclosure.thermostats.some((t) => t.id === enclosure.heaters[main]!.thermostatId);
  return statted && enclosure.thermometers.some((t) => t.place === 'basking' && t.kind !== 'stick-on-dial');
}

/** Basking temperature that a keeper aims at: the middle of what the animal wants [degC]. */
export const baskingAimC = (climate: ClimateNeeds): number =>
  (climate.baskingSurfaceC.low + climate.baskingSurfaceC.high) / 2;

/** Dial at which the box would rest as it does here, by itself [degC]. */
function dialOf(model: BoxModel, held: SettledBox, t: number): number {
  const { enclosure, parameters } = model;
  const thermostat = enclosure.thermostats[t]!;
  const main = mainHeater(enclosure);
  const ratedW = enclosure.heaters[main]!.powerW * parameters.heaterPower;
  return dialForReading(meanBandK(thermostat), held.probeC[t]!, held.now[main]!.powerW / ratedW);
}

export function memberAnswer(
  model: BoxModel,
  moments: Moments,
  climate: ClimateNeeds,
  warm?: SettledBox,
): MemberAnswer {
  const { enclosure } = model;
  const day = settleBox(model, moments.winterDay, warm);
  const flat = settleBox(model, { ...moments.winterDay, stuckDuty: 1 }, day);
  const answer = (c: SteadyConditions, s: SettledBox) => steadyAnswer(model, c, s);
  const untrimmedDay = answer(moments.winterDay, day);
  const flatOutBaskingC = answer(moments.winterDay, flat).places['basking-surface']!;
  let trimmed: SettledBox | null = null;
  let dialC: number | null = null;
  const t = mainThermostat(model);
  /** By day the dial is trimmed, as far as it goes. */
  const trim = (
    moment: SteadyConditions,
    from: SettledBox,
  ): { readonly at: SteadyConditions; readonly box: SettledBox } => {
    if (!keeperTrims(enclosure)) return { at: moment, box: settleBox(model, moment, from) };
    const at = { ...moment, holdBaskingC: baskingAimC(climate) };
    const box = settleBox(model, at, from);
    if (dialOf(model, box, t) <= mostDialC) return { at, box };
    const most = { ...moment, setC: enclosure.thermostats.map((x, i) => (i === t ? mostDialC : x.setDayC)) };
    return { at: most, box: settleBox(model, most, from) };
  };
  const cold = trim(moments.winterDay, day);
  if (keeperTrims(enclosure)) {
    trimmed = cold.box;
    dialC = cold.at.holdBaskingC === undefined ? null : dialOf(model, trimmed, t);
  }
  // Who can trim does so in every season: by day the basking surface is held; by night the night set point stands,
  // never above the trimmed dial. A box too weak to reach the aim has no dial to trim to, and simply runs flat out.
  const reaches = flatOutBaskingC >= baskingAimC(climate);
  const nightSetC =
    trimmed && reaches && dialC !== null
      ? { setC: enclosure.thermostats.map((x, i) => (i === t ? Math.min(x.setNightC, dialC!) : x.setNightC)) }
      : {};
  const winterNight = { ...moments.winterNight, ...nightSetC };
  const summerNight = { ...moments.summerNight, ...nightSetC };
  const night = settleBox(model, winterNight, day);
  const { at: summerDay, box: hot } = trim(moments.summerDay, day);
  const warmNight = settleBox(model, summerNight, night);
  // a heater that is flat out in winter has something in hand here, so the day is held anew, not read off the others
  const { at: midDay, box: mild } = trim(moments.midDay, trimmed ?? day);
  const midNight = { ...moments.midNight, ...nightSetC };
  const mildNight = settleBox(model, midNight, night);
  const winterDay = trimmed ? cold.at : moments.winterDay;
  const { holdBaskingC, setC } = winterDay;
  const held = { ...(holdBaskingC === undefined ? {} : { holdBaskingC }), ...(setC === undefined ? {} : { setC }) };
  return {
    winterNight: answer(winterNight, night),
    winterDay: trimmed ? answer({ ...moments.winterDay }, trimmed) : untrimmedDay,
    summerDay: answer(summerDay, hot),
    summerNight: answer(summerNight, warmNight),
    midDay: answer(midDay, mild),
    midNight: answer(midNight, mildNight),
    turnDay: turnOf(model, [winterDay, midDay, summerDay], [trimmed ?? day, mild, hot]),
    turnNight: turnOf(model, [winterNight, midNight, summerNight], [night, mildNight, warmNight]),
    flatOutBaskingC,
    untrimmedDay,
    trimmedDialC: reaches ? dialC : null,
    dries: sprayedGPerDay(enclosure) > 0 ? driesGPerDay(model, { day: held, night: nightSetC }, trimmed ?? day) : null,
    settled: day,
  };
}

interface TurnPoint extends SeasonPoint {
  readonly at: SteadyConditions;
  readonly box: SettledBox;
}

/** The hottest of the points at which the heater of this day or night comes off its stop. */
function turnOf(
  model: BoxModel,
  [cold, mid, hot]: readonly [SteadyConditions, SteadyConditions, SteadyConditions],
  boxes: readonly [SettledBox, SettledBox, SettledBox],
): SteadyAnswer | null {
  const point = (seasonFrac: number, at: SteadyConditions, box: SettledBox): TurnPoint => ({
    seasonFrac,
    dutyFrac: dutyOf(model, box, cold.isDay),
    at,
    box,
  });
  const known = [point(0, cold, boxes[0]), point(midFrac, mid, boxes[1]), point(1, hot, boxes[2])] as const;
  const tried = turningPoints(known, (frac) => {
    const at = { ...cold, ...between(cold, hot, frac) };
    return point(frac, at, settleBox(model, at, boxes[1]));
  });
  const answers = tried.map((p) => steadyAnswer(model, p.at, p.box));
  const reach = (a: SteadyAnswer): number => a.places['hottest-reachable'] ?? Number.NEGATIVE_INFINITY;
  return answers.reduce<SteadyAnswer | null>((most, a) => (most && reach(most) >= reach(a) ? most : a), null);
}

/** Share of its power at which the main heater runs, or at night those that work then. */
function dutyOf({ enclosure, parameters }: BoxModel, box: SettledBox, isDay: boolean): number {
  const main = mainHeater(enclosure);
  const works = enclosure.heaters.map((h, i) => (isDay ? i === main : h.period === 'all'));
  const sum = (watts: (i: number) => number) => works.reduce((all, on, i) => all + (on ? watts(i) : 0), 0);
  const mostW = sum((i) => enclosure.heaters[i]!.powerW * parameters.heaterPower);
  return mostW > 0 ? sum((i) => box.now[i]!.powerW) / mostW : 0;
}
