// Solves the states of one version of one arrangement that surface.ts draws its lines through: six settled boxes.
// This is the slow part of a search and runs in workers. Leaves out: judging (judge-kit.ts).
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Parameters } from '../../physics/parameters.ts';
import { type BoxGeometry, type BoxModel, modelFrom, type SettledBox, type SteadyConditions, settleBox } from '../../physics/simulate.ts';
import { steadyAnswer } from '../../physics/steady-answer.ts';
import { baskingAimC, type Moments } from '../member.ts';
import { lineQuantities, linePlaces, type LineQuantity, type MemberSurface, type WattLine } from './surface.ts';

/** Shares of the winter day's power at which the other states are solved; our choice. */
const shares = { day: 0.55, nightLow: 0.4, nightHigh: 0.85, summer: 0.5 } as const;
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
  const { enclosure } = model;
  const hasNight = enclosure.heaters.length > 1;
  const fixed = (c: SteadyConditions, day: number, night = 0): SteadyConditions => ({
    ...c,
    fixedW: hasNight ? [day, night] : [day],
  });
  const held = settleBox(model, dayHold(model, moments.winterDay, climate), warm);
  const dayW = Math.max(leastW, held.now[0]?.powerW ?? 0);
  const nightHeater = enclosure.heaters[hasNight ? 1 : 0];
  const nightMostW = (nightHeater?.powerW ?? 0) * parameters.heaterPower;
  const scaleW = Math.max(leastW * 3, Math.min(nightMostW, Math.max(dayW, 5)));
  const nightTo = (share: number) => (hasNight ? fixed(moments.winterNight, 0, share * scaleW) : fixed(moments.winterNight, share * scaleW));
  const dayBelow = settleBox(model, fixed(moments.winterDay, shares.day * dayW), held);
  const nightBelow = settleBox(model, nightTo(shares.nightLow), dayBelow);
  const nightAbove = settleBox(model, nightTo(shares.nightHigh), nightBelow);
  const day = line(
    model,
    moments.winterDay,
    { settled: dayBelow, powerW: shares.day * dayW },
    { settled: held, powerW: held.now[0]?.powerW ?? dayW },
    0,
  );
  const dialC = held.probeC[0] ?? moments.winterDay.roomC;
  const setC = enclosure.thermostats.map((t, i) => (i === 0 ? dialC : Math.min(t.setNightC, dialC)));
  const summerNow = settleBox(model, { ...moments.summerDay, setC }, held);
  const summerW = summerNow.now[0]?.powerW ?? 0;
  const summer =
    summerW > leastW
      ? line(
          model,
          moments.summerDay,
          {
            settled: settleBox(model, fixed(moments.summerDay, shares.summer * summerW), summerNow),
            powerW: shares.summer * summerW,
          },
          { settled: summerNow, powerW: summerW },
          0,
        )
      : shifted(day, valuesOf(model, moments.summerDay, summerNow, 0), summerW, moments.summerDay.roomC);
  const t = hasNight ? 1 : 0;
  const night = line(
    model,
    moments.winterNight,
    { settled: nightBelow, powerW: shares.nightLow * scaleW },
    { settled: nightAbove, powerW: shares.nightHigh * scaleW },
    t,
  );
  const warmer = moments.summerNight.roomC - moments.winterNight.roomC;
  const summerNight: WattLine = { ...night, roomC: moments.summerNight.roomC, low: raised(night.low, warmer), high: raised(night.high, warmer) };
  return { surface: { heaterPower: parameters.heaterPower, day, night, summer, summerNight }, settled: held };
}

const dayHold = (model: BoxModel, winterDay: SteadyConditions, climate: ClimateNeeds): SteadyConditions => ({
  ...winterDay,
  holdBaskingC: baskingAimC(climate),
  // the night heater rests by day: its thermostat is set far below
  setC: model.enclosure.thermostats.map((t, i) => (i === 0 ? t.setDayC : 5)),
});

interface State {
  readonly settled: SettledBox;
  readonly powerW: number;
}

function line(model: BoxModel, c: SteadyConditions, low: State, high: State, thermostat: number): WattLine {
  return {
    roomC: c.roomC,
    lowW: low.powerW,
    highW: high.powerW,
    low: valuesOf(model, c, low.settled, thermostat),
    high: valuesOf(model, c, high.settled, thermostat),
  };
}

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
  const level: readonly LineQuantity[] = ['coolRhPct', 'glassDewMarginK', 'evaporationGPerH'];
  const low = values.map((v, i) => {
    const rise = (like.high[i] ?? Number.NaN) - (like.low[i] ?? Number.NaN);
    return level.includes(lineQuantities[i] as LineQuantity) ? v : v - rise;
  });
  return { roomC, lowW: powerW - span, highW: powerW, low, high: values };
}

/** Temperatures raised with the room; humidity, dew and water left as they are (used for power alone). */
const raised = (values: readonly number[], kelvin: number): number[] =>
  values.map((v, i) => {
    const q = lineQuantities[i] ?? '';
    return ['coolRhPct', 'glassDewMarginK', 'evaporationGPerH'].includes(q) ? v : v + kelvin;
  });
