// Does a kit hold in one version of the box? Read off the lines of its arrangement at the power its heater and thermostat
// would settle at, then judged need by need as the plan judges (climate-verdicts.ts; a test keeps both the same).
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { PlaceId } from '../../physics/answer.ts';
import { midAllowanceK, summerAllowanceK } from '../climate-verdicts.ts';
import { dialForReading, mostDialC } from '../dial/dial-setting.ts';
import type { JudgedMember, JudgedMoment, JudgedTurn } from '../judged-member.ts';
import { baskingAimC } from '../member.ts';
import { heldPowerW, linePlaces, type MemberSurface, onLine, type WattLine } from './surface.ts';
import { turnDayOnLines, turnNightOnLines } from './turn-on-lines.ts';

/** All of a kit that its temperatures depend on. Kits that agree in it are judged together. */
export interface Behaviour {
  readonly powerW: number;
  /** From meanBandK, as nightBandK. */
  readonly bandK: number;
  /** Heater that works at night; the same as by day when there is only one. */
  readonly nightPowerW: number;
  readonly nightBandK: number;
  /** Dial by day before it is trimmed [degC]. */
  readonly setDayC: number;
  /** Dial at night [degC]. */
  readonly setNightC: number;
  /** Two heaters: the night one has its own thermostat. */
  readonly twoHeaters: boolean;
}

/** Powers a kit settles at in one version [W], and the dial that the keeper ends up with. */
export interface KitPowers {
  readonly dayW: number;
  /** Winter day with the dial not trimmed yet. */
  readonly untrimmedW: number;
  readonly nightW: number;
  readonly summerW: number;
  readonly summerNightW: number;
  readonly midW: number;
  readonly midNightW: number;
  readonly dialC: number;
  /** Dial at night. */
  readonly nightSetC: number;
}

export const kitNeeds = [
  'basking-surface',
  'night-warmth',
  'cool-end-winter',
  'cool-end-mid',
  'cool-end-summer',
  'hottest-reachable',
  'humidity-winter',
  'humidity-summer',
  'dew-on-glass',
] as const;
export type KitNeed = (typeof kitNeeds)[number];
/** Needs that a heater or a box change can mend in each season; the reachable surface counts in all. */
export const winterNeeds: readonly KitNeed[] = [
  'basking-surface',
  'night-warmth',
  'cool-end-winter',
  'hottest-reachable',
  'humidity-winter',
  'dew-on-glass',
];
export const midNeeds: readonly KitNeed[] = ['cool-end-mid', 'hottest-reachable'];
export const summerNeeds: readonly KitNeed[] = ['cool-end-summer', 'hottest-reachable', 'humidity-summer'];

export function kitPowers(surface: MemberSurface, b: Behaviour): KitPowers {
  const ratedW = b.powerW * surface.heaterPower;
  const within = (line: WattLine) => Math.min(line.highW, ratedW, heldPowerW(line, mostDialC, b.bandK, ratedW));
  const dayW = within(surface.day);
  const dialC = dialForReading(b.bandK, onLine(surface.day, 'probeC', dayW), ratedW > 0 ? dayW / ratedW : 0);
  const untrimmedW = heldPowerW(surface.day, b.setDayC, b.bandK, ratedW);
  const nightRatedW = b.nightPowerW * surface.heaterPower;
  const reaches = canTrim(surface, dayW);
  const setC = b.twoHeaters || !reaches ? b.setNightC : Math.min(b.setNightC, dialC);
  const nightW = heldPowerW(surface.night, setC, b.nightBandK, nightRatedW);
  const summerW = within(surface.summer);
  const summerNightW = heldPowerW(surface.summerNight, setC, b.nightBandK, nightRatedW);
  const midW = within(surface.mid);
  const midNightW = heldPowerW(surface.midNight, setC, b.nightBandK, nightRatedW);
  return { dayW, untrimmedW, nightW, summerW, summerNightW, midW, midNightW, dialC, nightSetC: setC };
}

/** Whether this heater reaches the wanted basking surface at a dial that there is, so that it can be trimmed by it. */
const canTrim = (surface: MemberSurface, dayW: number): boolean => surface.reaches && dayW >= surface.day.highW - 1e-9;

/** The day and the night on which its heaters come off their stop, the hottest for a surface in reach. */
function turnsOf(surface: MemberSurface, b: Behaviour, climate: ClimateNeeds, nightSetC: number) {
  const { heaterPower } = surface;
  return {
    day: turnDayOnLines(surface, baskingAimC(climate), b.powerW * heaterPower),
    night: turnNightOnLines(surface, nightSetC, b.nightBandK, b.nightPowerW * heaterPower),
  };
}

const reachOf = (turn: JudgedTurn | null): number => turn?.places['hottest-reachable'] ?? Number.NEGATIVE_INFINITY;

/** How far each need is from its limit, in the order of kitNeeds: held at 0 and above. Degrees, or points of humidity. */
export function needMargins(surface: MemberSurface, b: Behaviour, climate: ClimateNeeds): number[] {
  const { dayW, untrimmedW, nightW, summerW, summerNightW, midW, midNightW, nightSetC } = kitPowers(surface, b);
  const { day, night, summer, summerNight, mid, midNight } = surface;
  const basking = onLine(day, 'basking-surface', dayW);
  const turns = turnsOf(surface, b, climate, nightSetC);
  const hottest = Math.max(
    onLine(day, 'hottest-reachable', dayW),
    onLine(day, 'hottest-reachable', untrimmedW),
    onLine(night, 'hottest-reachable', nightW),
    onLine(summer, 'hottest-reachable', summerW),
    onLine(summerNight, 'hottest-reachable', summerNightW),
    onLine(mid, 'hottest-reachable', midW),
    onLine(midNight, 'hottest-reachable', midNightW),
    reachOf(turns.day),
    reachOf(turns.night),
  );
  return [
    within(basking, climate.baskingSurfaceC) + 0.05,
    warmPlace(night, nightW) - climate.nightMinC.low,
    within(onLine(day, 'cool-air', dayW), climate.coolAirC),
    within(onLine(mid, 'cool-air', midW), { low: climate.coolAirC.low, high: climate.coolAirC.high + midAllowanceK }),
    climate.coolAirC.high + summerAllowanceK - onLine(summer, 'cool-air', summerW),
    climate.reachableMaxC.alarm - hottest,
    within(rh(onLine(day, 'coolRhPct', dayW)), climate.rhPct),
    within(rh(onLine(summer, 'coolRhPct', summerW)), climate.rhPct),
    // dew settles at no margin at all, so exactly zero fails
    onLine(night, 'glassDewMarginK', nightW) - 1e-9,
  ];
}

const within = (v: number, r: { readonly low: number; readonly high: number }): number =>
  Math.min(v - r.low, r.high - v);

const rh = (v: number): number => Math.max(0, Math.min(100, v));

/** The warm hide, or the warm end's air where there is none. */
function warmPlace(line: WattLine, powerW: number): number {
  const hide = onLine(line, 'warm-hide', powerW);
  return Number.isNaN(hide) ? onLine(line, 'warm-air', powerW) : hide;
}

/** The same version in the form that the plan's verdicts read. */
export function judgedMember(surface: MemberSurface, b: Behaviour, climate: ClimateNeeds): JudgedMember {
  const p = kitPowers(surface, b);
  const ratedW = b.powerW * surface.heaterPower;
  const at = (line: WattLine, powerW: number, ofW: number): JudgedMoment => ({
    places: placesAt(line, powerW),
    dutyFrac: ofW > 0 ? powerW / ofW : 0,
    coolRhPct: rh(onLine(line, 'coolRhPct', powerW)),
    glassDewMarginK: onLine(line, 'glassDewMarginK', powerW),
    evaporationGPerH: onLine(line, 'evaporationGPerH', powerW),
  });
  const winterDay = at(surface.day, p.dayW, ratedW);
  const turns = turnsOf(surface, b, climate, p.nightSetC);
  return {
    winterNight: at(surface.night, p.nightW, b.nightPowerW * surface.heaterPower),
    winterDay,
    untrimmedDay: at(surface.day, p.untrimmedW, ratedW),
    summerDay: at(surface.summer, p.summerW, ratedW),
    summerNight: at(surface.summerNight, p.summerNightW, b.nightPowerW * surface.heaterPower),
    midDay: at(surface.mid, p.midW, ratedW),
    midNight: at(surface.midNight, p.midNightW, b.nightPowerW * surface.heaterPower),
    turnDay: turns.day,
    turnNight: turns.night,
    flatOutBaskingC: onLine(surface.day, 'basking-surface', ratedW),
    trimmedDialC: canTrim(surface, p.dayW) ? p.dialC : null,
  };
}

function placesAt(line: WattLine, powerW: number): Readonly<Record<PlaceId, number | null>> {
  const none = {
    'basking-spot': null,
    'cool-floor': null,
    perch: null,
    probe: onLine(line, 'probeC', powerW),
    'front-glass': null,
    'heater-surface': null,
  };
  const read = Object.fromEntries(
    linePlaces.map((place) => {
      const v = onLine(line, place, powerW);
      return [place, Number.isNaN(v) ? null : v];
    }),
  );
  return { ...none, ...read } as Record<PlaceId, number | null>;
}
