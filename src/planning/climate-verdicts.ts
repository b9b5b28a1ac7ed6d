// The verdict on every need of climate, from the ensemble: holds, fails or not known, with reasons, fixes and the reading
// that would settle it. Texts are plain English here; other languages translate by need id and figures (see `facts`).
import type { ClimateNeeds, SourcedRange } from '../husbandry/climate.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { verdictFromShare } from '../shared/verdict.ts';
import { intervalOf } from './interval.ts';
import type { JudgedMember } from './judged-member.ts';
import { baskingAimC, keeperTrims, type Moments } from './member.ts';

/** Summer days on which the cool end may stand this much above the wanted band [K]; our choice. */
export const summerAllowanceK = 2;
/** Night: the warm refuge must reach the low end of what the species wants by night; our choice of place. */

interface Judged {
  readonly id: string;
  readonly group: NeedVerdict['group'];
  readonly title: string;
  readonly wanted: string;
  readonly values: readonly number[];
  readonly holds: (value: number, member: JudgedMember) => boolean;
  readonly unit: string;
  readonly basis: Pick<NeedVerdict, 'source' | 'read' | 'own'>;
  readonly failing: readonly string[];
  readonly fixes: readonly string[];
  readonly settledBy: string;
  readonly holding: string;
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
  const found = `${number(i.median)} ${j.unit} (${number(i.low)} to ${number(i.high)})`;
  const doubt = `In ${Math.round(share * 100)} of 100 likely versions of this box it holds.`;
  return {
    id: j.id,
    group: j.group,
    title: j.title,
    verdict,
    wanted: j.wanted,
    found,
    reasons:
      verdict === 'holds' ? [j.holding, doubt] : verdict === 'fails' ? [...j.failing, doubt] : [doubt, ...j.failing],
    fixes: verdict === 'holds' ? [] : j.fixes,
    ...(verdict === 'not-known' ? { settledBy: j.settledBy } : {}),
    shareHolding: share,
    source: j.basis.source,
    read: j.basis.read,
    ...(j.basis.own ? { own: j.basis.own } : {}),
  };
}

const number = (v: number): string => v.toFixed(1);
/** A best estimate that is right while its spread is not. */
const spreadText = (value: number, unit: string): string =>
  `The best estimate, ${number(value)} ${unit}, is what is wanted; how sure it is, is not enough.`;
const range = (r: SourcedRange): string => `${r.low} to ${r.high}`;
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
  const reachText = `With the heater flat out in a room of ${number(room)} °C the basking surface reaches ${number(median(reach))} °C.`;
  const values = trimmed
    ? members.map((m) => m.winterDay.places['basking-surface']!)
    : members.map((m) => m.untrimmedDay.places['basking-surface']!);
  const tooWeak = median(reach) < want.low;
  return {
    id: 'basking-surface',
    group: 'heat',
    title: 'Basking surface on the coldest day',
    wanted: `${range(want)} °C`,
    values,
    holds: (v) => v >= want.low - 0.05 && v <= want.high + 0.05,
    unit: '°C',
    basis: want,
    failing: tooWeak
      ? [reachText, `${watts} W is too little for this box in that room.`]
      : trimmed
        ? [reachText]
        : [`At this dial the model cannot say closely enough how warm the basking surface is.`, reachText],
    fixes: tooWeak
      ? [
          'A stronger heater of the same kind, within the thermostat’s rating.',
          'Insulate the back, the ends and the top from outside.',
          'A warmer room.',
        ]
      : median(values) > want.high
        ? ['Lower the dial, and trim it by a thermometer at the basking site.']
        : ['Put a thermometer at the basking site and trim the dial by its reading.'],
    settledBy: 'A reading of the basking surface with the box run empty.',
    holding: trimmed
      ? `The dial is trimmed by the thermometer at the basking site, aiming at ${number(baskingAimC(climate))} °C; the heater has enough in hand. ${reachText}`
      : reachText,
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
  const why =
    watts === 0
      ? 'No heater works at night.'
      : flat > 0.5
        ? `All ${watts} W run without pause and are not enough.`
        : 'The night set point asks for too little.';
  return {
    id: 'night-warmth',
    group: 'heat',
    title: `Warm ${hide ? 'hide' : 'end'} on the coldest night`,
    wanted: `at least ${want.low} °C`,
    values,
    holds: (v) => v >= want.low,
    unit: '°C',
    basis: want,
    failing: [
      `At ${number(moments.winterNight.roomC)} °C in the room the warm ${hide ? 'hide' : 'end'} is at ${number(median(values))} °C; this animal needs ${want.low} °C.`,
      why,
    ],
    fixes:
      flat > 0.5 || watts === 0
        ? [
            'A heater without light that works at night, strong enough for the coldest room.',
            'Insulate the back, the ends and the top from outside.',
            'A room that stays warmer at night.',
          ]
        : ['Raise the night set point.'],
    settledBy: 'A logger in the warm hide over three nights.',
    holding: `At ${number(moments.winterNight.roomC)} °C in the room the warm ${hide ? 'hide' : 'end'} keeps ${number(median(values))} °C.`,
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
    wanted: `${range(want)} °C`,
    values,
    holds: (v) => v >= want.low && v <= want.high,
    unit: '°C',
    basis: want,
    failing: inside
      ? [spreadText(median(values), '°C')]
      : cold
        ? [`In a room of ${number(moments.winterDay.roomC)} °C the cool end stands at ${number(median(values))} °C.`]
        : [
            `The cool end stands at ${number(median(values))} °C: the animal has no place to cool down, the heat spreads too far.`,
          ],
    fixes: inside
      ? []
      : cold
        ? ['Cover part of the vents or mesh, away from the heater.', 'Insulate the cool end from outside.']
        : ['A longer box, or the heater nearer to its end.', 'More vent area at the cool end.'],
    settledBy: 'A reading at the cool end with the box run empty.',
    holding: `The cool end stands at ${number(median(values))} °C.`,
  };
}

function coolSummer(climate: ClimateNeeds, members: readonly JudgedMember[], moments: Moments): Judged {
  const want = climate.coolAirC;
  const limit = want.high + summerAllowanceK;
  const values = members.map((m) => m.summerDay.places['cool-air']!);
  const room = moments.summerDay.roomC;
  const off = median(members.map((m) => m.summerDay.dutyFrac)) < 0.02;
  const reasons = [
    `On the hottest day the room is at ${number(room)} °C and the cool end at ${number(median(values))} °C.`,
  ];
  if (room > limit) reasons.push('No heater can cool this room: every kit fails here.');
  else if (off) reasons.push('The heater is already off; the warmth comes from the room and the sun.');
  return {
    id: 'cool-end-summer',
    group: 'heat',
    title: 'Cool end on the hottest day',
    wanted: `at most ${limit} °C (${want.high} °C and ${summerAllowanceK} K for a hot day, our choice)`,
    values,
    holds: (v) => v <= limit,
    unit: '°C',
    basis: want,
    failing: reasons,
    fixes:
      room > limit
        ? [
            'Another room, or one that is cooled.',
            moments.summerDay.sunWPerM2 > 0 ? 'Out of the sun.' : 'Shade and night air, if they bring the room down.',
          ]
        : [
            moments.summerDay.sunWPerM2 > 0
              ? 'Out of the sun, or shade the glass from outside.'
              : 'More vents at the cool end.',
            'A lower day set point in summer.',
          ],
    settledBy: 'A logger at the cool end through a warm week.',
    holding: `On the hottest day, ${number(room)} °C in the room, the cool end stays at ${number(median(values))} °C.`,
  };
}

function reachable(climate: ClimateNeeds, members: readonly JudgedMember[]): Judged {
  const { alarm, target } = climate.reachableMaxC;
  const values = members.map((m) =>
    Math.max(
      m.winterDay.places['hottest-reachable']!,
      m.untrimmedDay.places['hottest-reachable']!,
      m.winterNight.places['hottest-reachable']!,
      m.summerDay.places['hottest-reachable']!,
    ),
  );
  return {
    id: 'hottest-reachable',
    group: 'safety',
    title: 'Hottest surface the animal can reach',
    wanted: `at most ${alarm} °C, better ${target}`,
    values,
    holds: (v) => v <= alarm,
    unit: '°C',
    basis: { ...climate.reachableMaxC, read: 'memory' },
    failing: [
      `A surface within reach is at ${number(median(values))} °C. Snakes often fail to leave a surface that burns them.`,
    ],
    fixes: [
      'A guard round every hot heater inside.',
      'A thermostat on every heater, its probe where it cannot be moved.',
      'A lower dial, or the heater higher above the floor.',
    ],
    settledBy: 'A reading of the hottest surface after two hours of heating.',
    holding: `Nothing within reach passes ${number(Math.max(...values))} °C.`,
  };
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
    wanted: `${range(want)} % relative humidity`,
    values,
    holds: (v) => v >= want.low && v <= want.high,
    unit: '%',
    basis: want,
    failing: inside
      ? [spreadText(median(values), '%')]
      : dry
        ? [
            `The air is too dry: ${number(median(values))} %. Bowl and substrate give ${number(water)} g of water a day; fresh air carries it off.`,
          ]
        : [`The air is damp: ${number(median(values))} %.`],
    fixes: inside
      ? []
      : dry
        ? [
            'Keep part of the substrate damp, away from the heater, or mist.',
            'Cover part of the mesh or vents, well clear of any lamp; then look at the temperatures again.',
            'A humid hide for the slough.',
          ]
        : ['More vent area, high and low.', 'A smaller bowl at the cool end; no damp substrate.'],
    settledBy: 'A hygrometer at the cool end over three days.',
    holding: `The cool end stays at ${number(median(values))} %.`,
  };
}

function glass(members: readonly JudgedMember[]): Judged {
  const values = members.map((m) => m.winterNight.glassDewMarginK);
  return {
    id: 'dew-on-glass',
    group: 'moisture',
    title: 'No dew on the front on a winter night',
    wanted: 'front warmer than the dew point',
    values,
    holds: (v) => v > 0,
    unit: 'K above the dew point',
    basis: { source: 'OUR-CHOICE', read: 'memory' },
    failing: ['Moisture settles on the front and runs into the substrate; a floor that stays wet harms the skin.'],
    fixes: ['More vent area.', 'Less water in the box at night.'],
    settledBy: 'A look at the front early on a cold morning.',
    holding: 'The front stays above the dew point.',
  };
}
