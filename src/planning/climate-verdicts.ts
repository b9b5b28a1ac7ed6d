// The verdict on every need of climate, from the ensemble: holds, fails or not known, with reasons, fixes and the reading
// that would settle it. Texts are plain English here; other languages translate by need id and figures (see `facts`).
import type { ClimateNeeds, SourcedRange } from '../husbandry/climate.ts';
import { coded, type Sayable } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { need } from '../husbandry/rule.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { verdictFromShare } from '../shared/verdict.ts';
import { intervalOf } from './interval.ts';
import type { JudgedMember, JudgedMoment, JudgedTurn } from './judged-member.ts';
import { baskingAimC, keeperTrims, type Moments } from './member.ts';

/** Summer days on which the cool end may stand this much above the wanted band [K]; our choice. */
export const summerAllowanceK = 2;
/** Halfway to the hottest day it may stand half as far above; our choice. */
export const midAllowanceK = summerAllowanceK / 2;
/** Night: the warm refuge must reach the low end of what the species wants by night; our choice of place. */

const say = coded('climate', {
  doubt: (share: string) => `In ${share} of 100 likely versions of this box it holds.`,
  spread: (value: string) => `The best estimate, ${value}, is what is wanted; how sure it is, is not enough.`,
  found: (median: string, unit: string, low: string, high: string) => `${median} ${unit} (${low} to ${high})`,
  /** In a single version there is no range. */
  foundOne: (value: string, unit: string) => `${value} ${unit}`,
  band: (low: string, high: string, unit: string) => `${low} to ${high} ${unit}`,
  atLeast: (value: string) => `at least ${value}`,
  reach: (room: string, basking: string) =>
    `With the heater flat out in a room of ${room} °C the basking surface reaches ${basking} °C.`,
  weak: (power: string) => `${power} W is too little for this box in that room.`,
  loose: 'At this dial the model cannot say closely enough how warm the basking surface is.',
  stronger: 'A stronger heater of the same kind, within the thermostat’s rating.',
  insulate: 'Insulate the back, the ends and the top from outside.',
  warmerRoom: 'A warmer room.',
  lowerDial: 'Lower the dial, and trim it by a thermometer at the basking site.',
  trim: 'Put a thermometer at the basking site and trim the dial by its reading.',
  readBasking: 'A reading of the basking surface with the box run empty.',
  trimmed: (aim: string, reach: string) =>
    `The dial is trimmed by the thermometer at the basking site, aiming at ${aim} °C; the heater has enough in hand. ${reach}`,
  noNightHeat: 'No heater works at night.',
  flatOut: (power: string) => `All ${power} W run without pause and are not enough.`,
  lowNight: 'The night set point asks for too little.',
  cold: (room: string, place: string, found: string, wanted: string) =>
    `At ${room} °C in the room the warm ${place} is at ${found} °C; this animal needs ${wanted} °C.`,
  darkHeat: 'A heater without light that works at night, strong enough for the coldest room.',
  warmNights: 'A room that stays warmer at night.',
  raiseNight: 'Raise the night set point.',
  logHide: 'A logger in the warm hide over three nights.',
  warm: (room: string, place: string, found: string) =>
    `At ${room} °C in the room the warm ${place} keeps ${found} °C.`,
  coolCold: (room: string, found: string) => `In a room of ${room} °C the cool end stands at ${found} °C.`,
  coolWarm: (found: string) =>
    `The cool end stands at ${found} °C: the animal has no place to cool down, the heat spreads too far.`,
  coverVents: 'Cover part of the vents or mesh, away from the heater.',
  insulateCool: 'Insulate the cool end from outside.',
  longer: 'A longer box, or the heater nearer to its end.',
  ventCool: 'More vent area at the cool end.',
  readCool: 'A reading at the cool end with the box run empty.',
  coolIs: (found: string) => `The cool end stands at ${found} °C.`,
  hotDay: (room: string, found: string) =>
    `On the hottest day the room is at ${room} °C and the cool end at ${found} °C.`,
  mildDay: (room: string, found: string) =>
    `Halfway between winter and summer, at ${room} °C in the room, the cool end stands at ${found} °C.`,
  noCoolingMid: 'No heater can cool this room: it is warmer than the cool end may be, for weeks.',
  noCooling: 'No heater can cool this room: every kit fails here.',
  alreadyOff: 'The heater is already off; the warmth comes from the room and the sun.',
  atMostSummer: (limit: string, high: string, allowance: string) =>
    `at most ${limit} °C (${high} °C and ${allowance} K for a hot day, our choice)`,
  bandMid: (low: string, limit: string, high: string, allowance: string) =>
    `${low} to ${limit} °C (${high} °C and ${allowance} K for a day halfway to the hottest, our choice)`,
  otherRoom: 'Another room, or one that is cooled.',
  outOfSun: 'Out of the sun.',
  shadeAir: 'Shade and night air, if they bring the room down.',
  shadeGlass: 'Out of the sun, or shade the glass from outside.',
  moreVents: 'More vents at the cool end.',
  lowerDay: 'A lower day set point in summer.',
  logCool: 'A logger at the cool end through a warm week.',
  summerIs: (room: string, found: string) =>
    `On the hottest day, ${room} °C in the room, the cool end stays at ${found} °C.`,
  atMostReach: (alarm: string, target: string) => `at most ${alarm} °C, better ${target} °C`,
  burns: (found: string) =>
    `A surface within reach is at ${found} °C. Snakes often fail to leave a surface that burns them.`,
  hottestMid:
    'It is hottest in mid-season: the heater that is flat out in winter has something in hand then and reaches its aim.',
  hottestTurn: (room: string) =>
    `It is hottest between the seasons, at about ${room} °C in the room: up to there the heater is flat out and the room adds to it.`,
  guard: 'A guard round every hot heater inside.',
  thermostat: 'A thermostat on every heater, its probe where it cannot be moved.',
  lower: 'A lower dial, or the heater higher above the floor.',
  readHot: 'A reading of the hottest surface after two hours of heating.',
  safe: (found: string) => `Nothing within reach passes ${found} °C.`,
  dry: (found: string, water: string) =>
    `The air is too dry: ${found} %. Bowl and substrate give ${water} g of water a day; fresh air carries it off.`,
  damp: (found: string) => `The air is damp: ${found} %.`,
  dampen: 'Keep part of the substrate damp, away from the heater, or mist.',
  coverMesh: 'Cover part of the mesh or vents, well clear of any lamp; then look at the temperatures again.',
  humidHide: 'A humid hide for the slough.',
  ventHighLow: 'More vent area, high and low.',
  drier: 'A smaller bowl at the cool end; no damp substrate.',
  readHumidity: 'A hygrometer at the cool end over three days.',
  humidityIs: (found: string) => `The cool end stays at ${found} %.`,
  dewWanted: 'front warmer than the dew point',
  dew: 'Moisture settles on the front and runs into the substrate; a floor that stays wet harms the skin.',
  ventMore: 'More vent area.',
  lessWater: 'Less water in the box at night.',
  lookFront: 'A look at the front early on a cold morning.',
  noDew: 'The front stays above the dew point.',
});

interface Judged {
  readonly id: string;
  readonly group: NeedVerdict['group'];
  readonly title: string;
  readonly wanted: Sayable;
  readonly values: readonly number[];
  readonly holds: (value: number, member: JudgedMember) => boolean;
  readonly unit: string;
  readonly basis: Pick<NeedVerdict, 'source' | 'read' | 'own'>;
  readonly failing: readonly Sayable[];
  readonly fixes: readonly Sayable[];
  readonly settledBy: Sayable;
  readonly holding: Sayable;
}

export function climateVerdicts(
  enclosure: Enclosure,
  climate: ClimateNeeds,
  members: readonly JudgedMember[],
  moments: Moments,
): NeedVerdict[] {
  return [
    basking(enclosure, climate, members, moments),
    night(enclosure, climate, members, moments),
    coolWinter(climate, members, moments),
    coolMid(climate, members, moments),
    coolSummer(climate, members, moments),
    reachable(climate, members),
    humidity('winter', climate, members),
    humidity('summer', climate, members),
    glass(members),
  ].map((j) => judge(j, members));
}

function judge(j: Judged, members: readonly JudgedMember[]): NeedVerdict {
  const share = j.values.filter((v, i) => j.holds(v, members[i]!)).length / j.values.length;
  const verdict = verdictFromShare(share);
  const i = intervalOf(j.values);
  const found =
    members.length > 1
      ? say.found(number(i.median), j.unit, number(i.low), number(i.high))
      : say.foundOne(number(i.median), j.unit);
  const doubt = say.doubt(String(Math.round(share * 100)));
  return need(
    {
      id: j.id,
      group: j.group,
      title: j.title,
      verdict,
      wanted: j.wanted,
      found,
      reasons:
        verdict === 'holds' ? [j.holding, doubt] : verdict === 'fails' ? [...j.failing, doubt] : [doubt, ...j.failing],
      fixes: j.fixes,
      ...(verdict === 'not-known' ? { settledBy: j.settledBy } : {}),
      shareHolding: share,
    },
    j.basis,
  );
}

const number = (v: number): string => v.toFixed(1);
/** A best estimate that is right while its spread is not. */
const spreadText = (value: number, unit: string) => say.spread(`${number(value)} ${unit}`);
const band = (r: SourcedRange, unit: string) => say.band(String(r.low), String(r.high), unit);
const median = (values: readonly number[]): number => intervalOf(values).median;

function basking(
  enclosure: Enclosure,
  climate: ClimateNeeds,
  members: readonly JudgedMember[],
  moments: Moments,
): Judged {
  const want = climate.baskingSurfaceC;
  const trimmed = keeperTrims(enclosure);
  const reach = members.map((m) => m.flatOutBaskingC);
  const watts = enclosure.heaters.reduce((s, h) => s + h.powerW, 0);
  const room = moments.winterDay.roomC;
  const reachText = say.reach(number(room), number(median(reach)));
  const values = trimmed
    ? members.map((m) => m.winterDay.places['basking-surface']!)
    : members.map((m) => m.untrimmedDay.places['basking-surface']!);
  const tooWeak = median(reach) < want.low;
  return {
    id: 'basking-surface',
    group: 'heat',
    title: 'Basking surface on the coldest day',
    wanted: band(want, '°C'),
    values,
    holds: (v) => v >= want.low - 0.05 && v <= want.high + 0.05,
    unit: '°C',
    basis: want,
    failing: tooWeak ? [reachText, say.weak(String(watts))] : trimmed ? [reachText] : [say.loose, reachText],
    fixes: tooWeak
      ? [say.stronger, say.insulate, say.warmerRoom]
      : median(values) > want.high
        ? [say.lowerDial]
        : [say.trim],
    settledBy: say.readBasking,
    holding: trimmed ? say.trimmed(number(baskingAimC(climate)), reachText) : reachText,
  };
}

function night(
  enclosure: Enclosure,
  climate: ClimateNeeds,
  members: readonly JudgedMember[],
  moments: Moments,
): Judged {
  const want = climate.nightMinC;
  const hide = members[0]!.winterNight.places['warm-hide'] !== null;
  const values = members.map((m) => (hide ? m.winterNight.places['warm-hide']! : m.winterNight.places['warm-air']!));
  const flat = members.filter((m) => m.winterNight.dutyFrac > 0.98).length / members.length;
  const watts = enclosure.heaters.filter((h) => h.period === 'all').reduce((s, h) => s + h.powerW, 0);
  const why = watts === 0 ? say.noNightHeat : flat > 0.5 ? say.flatOut(String(watts)) : say.lowNight;
  return {
    id: 'night-warmth',
    group: 'heat',
    title: `Warm ${hide ? 'hide' : 'end'} on the coldest night`,
    wanted: say.atLeast(`${want.low} °C`),
    values,
    holds: (v) => v >= want.low,
    unit: '°C',
    basis: want,
    failing: [
      say.cold(number(moments.winterNight.roomC), hide ? 'hide' : 'end', number(median(values)), String(want.low)),
      why,
    ],
    fixes: flat > 0.5 || watts === 0 ? [say.darkHeat, say.insulate, say.warmNights] : [say.raiseNight],
    settledBy: say.logHide,
    holding: say.warm(number(moments.winterNight.roomC), hide ? 'hide' : 'end', number(median(values))),
  };
}

function coolWinter(climate: ClimateNeeds, members: readonly JudgedMember[], moments: Moments): Judged {
  const want = climate.coolAirC;
  const values = members.map((m) => m.winterDay.places['cool-air']!);
  const cold = median(values) < want.low;
  const inside = !cold && median(values) <= want.high;
  return {
    id: 'cool-end-winter',
    group: 'heat',
    title: 'Cool end on a winter day',
    wanted: band(want, '°C'),
    values,
    holds: (v) => v >= want.low && v <= want.high,
    unit: '°C',
    basis: want,
    failing: inside
      ? [spreadText(median(values), '°C')]
      : cold
        ? [say.coolCold(number(moments.winterDay.roomC), number(median(values)))]
        : [say.coolWarm(number(median(values)))],
    fixes: inside ? [] : cold ? [say.coverVents, say.insulateCool] : [say.longer, say.ventCool],
    settledBy: say.readCool,
    holding: say.coolIs(number(median(values))),
  };
}

function coolMid(climate: ClimateNeeds, members: readonly JudgedMember[], moments: Moments): Judged {
  const want = climate.coolAirC;
  const limit = want.high + midAllowanceK;
  const values = members.map((m) => m.midDay.places['cool-air']!);
  const found = median(values);
  const said = say.mildDay(number(moments.midDay.roomC), number(found));
  const inside = found >= want.low && found <= limit;
  return {
    id: 'cool-end-mid',
    group: 'heat',
    title: 'Cool end in mid-season',
    wanted: say.bandMid(String(want.low), String(limit), String(want.high), String(midAllowanceK)),
    values,
    holds: (v) => v >= want.low && v <= limit,
    unit: '°C',
    basis: want,
    failing: inside
      ? [spreadText(found, '°C'), said]
      : [said, ...(moments.midDay.roomC > limit ? [say.noCoolingMid] : [])],
    fixes: inside
      ? []
      : found < want.low
        ? [say.coverVents, say.insulateCool]
        : moments.midDay.roomC > limit
          ? [say.otherRoom]
          : [say.longer, say.ventCool],
    settledBy: say.readCool,
    holding: said,
  };
}

function coolSummer(climate: ClimateNeeds, members: readonly JudgedMember[], moments: Moments): Judged {
  const want = climate.coolAirC;
  const limit = want.high + summerAllowanceK;
  const values = members.map((m) => m.summerDay.places['cool-air']!);
  const room = moments.summerDay.roomC;
  const off = median(members.map((m) => m.summerDay.dutyFrac)) < 0.02;
  const reasons: Sayable[] = [say.hotDay(number(room), number(median(values)))];
  if (room > limit) reasons.push(say.noCooling);
  else if (off) reasons.push(say.alreadyOff);
  return {
    id: 'cool-end-summer',
    group: 'heat',
    title: 'Cool end on the hottest day',
    wanted: say.atMostSummer(String(limit), String(want.high), String(summerAllowanceK)),
    values,
    holds: (v) => v <= limit,
    unit: '°C',
    basis: want,
    failing: reasons,
    fixes:
      room > limit
        ? [say.otherRoom, moments.summerDay.sunWPerM2 > 0 ? say.outOfSun : say.shadeAir]
        : [moments.summerDay.sunWPerM2 > 0 ? say.shadeGlass : say.moreVents, say.lowerDay],
    settledBy: say.logCool,
    holding: say.summerIs(number(room), number(median(values))),
  };
}

const reach = (m: JudgedTurn): number => m.places['hottest-reachable']!;

function reachable(climate: ClimateNeeds, members: readonly JudgedMember[]): Judged {
  const { alarm, target } = climate.reachableMaxC;
  const hottest = (...moments: readonly JudgedMoment[]) =>
    Math.max(...moments.map((m) => m.places['hottest-reachable']!));
  const atEnds = members.map((m) => hottest(m.winterDay, m.untrimmedDay, m.winterNight, m.summerDay, m.summerNight));
  const judged = members.map((m, i) => Math.max(atEnds[i]!, hottest(m.midDay, m.midNight)));
  const turns = members.map((m) => [m.turnDay, m.turnNight].filter((turn) => turn !== null));
  const values = judged.map((v, i) => Math.max(v, ...turns[i]!.map(reach)));
  const burns = say.burns(number(median(values)));
  // a tenth of a degree is what the sentences show
  const above = (more: readonly number[], less: readonly number[]) => median(more) > median(less) + 0.05;
  const when = above(values, judged)
    ? [say.hottestTurn(number(turnRoomC(turns)))]
    : above(judged, atEnds)
      ? [say.hottestMid]
      : [];
  return {
    id: 'hottest-reachable',
    group: 'safety',
    title: 'Hottest surface the animal can reach',
    wanted: say.atMostReach(String(alarm), String(target)),
    values,
    holds: (v) => v <= alarm,
    unit: '°C',
    basis: { ...climate.reachableMaxC, read: 'memory' },
    failing: [burns, ...when],
    fixes: [say.guard, say.thermostat, say.lower],
    settledBy: say.readHot,
    holding: say.safe(number(Math.max(...values))),
  };
}

/** Room in which the hotter of its turns stands, in the middle of the versions that have one. */
function turnRoomC(turns: readonly (readonly JudgedTurn[])[]): number {
  const hotter = turns.flatMap((own) => [...own].sort((a, b) => reach(b) - reach(a)).slice(0, 1));
  return median(hotter.map((turn) => turn.roomC));
}

function humidity(season: 'winter' | 'summer', climate: ClimateNeeds, members: readonly JudgedMember[]): Judged {
  const want = climate.rhPct;
  const pick = (m: JudgedMember) => (season === 'winter' ? m.winterDay : m.summerDay);
  const values = members.map((m) => pick(m).coolRhPct);
  const dry = median(values) < want.low;
  const inside = !dry && median(values) <= want.high;
  const water = median(members.map((m) => pick(m).evaporationGPerH)) * 24;
  return {
    id: `humidity-${season}`,
    group: 'moisture',
    title: `Humidity at the cool end in ${season}`,
    wanted: band(want, '% relative humidity'),
    values,
    holds: (v) => v >= want.low && v <= want.high,
    unit: '%',
    basis: want,
    failing: inside
      ? [spreadText(median(values), '%')]
      : dry
        ? [say.dry(number(median(values)), number(water))]
        : [say.damp(number(median(values)))],
    fixes: inside ? [] : dry ? [say.dampen, say.coverMesh, say.humidHide] : [say.ventHighLow, say.drier],
    settledBy: say.readHumidity,
    holding: say.humidityIs(number(median(values))),
  };
}

function glass(members: readonly JudgedMember[]): Judged {
  const values = members.map((m) => m.winterNight.glassDewMarginK);
  return {
    id: 'dew-on-glass',
    group: 'moisture',
    title: 'No dew on the front on a winter night',
    wanted: say.dewWanted,
    values,
    holds: (v) => v > 0,
    unit: 'K above the dew point',
    basis: { source: 'OUR-CHOICE', read: 'memory' },
    failing: [say.dew],
    fixes: [say.ventMore, say.lessWater],
    settledBy: say.lookFront,
    holding: say.noDew,
  };
}
