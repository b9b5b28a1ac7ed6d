// The plan: does this enclosure work for this animal in this room, in winter, in summer and between?
// An ensemble of likely boxes gives verdicts, intervals, the dial and the power; the best estimate gives the two days.
import type { ClimateNeeds } from '../husbandry/climate.ts';
import { coded, told } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { type PlaceId, placeIds, type SteadyAnswer } from '../physics/answer.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import type { MaterialTable } from '../physics/material.ts';
import { boxGeometry, modelFrom, type SettledBox, simulateDay } from '../physics/simulate.ts';
import { mainThermostat } from '../physics/steady.ts';
import { ensembleBounds, type Verdict, worstVerdict } from '../shared/verdict.ts';
import { climateVerdicts } from './climate-verdicts.ts';
import { drawMembers, type Priors } from './ensemble.ts';
import { floorShareWanted } from './floor-share.ts';
import { intervalOf } from './interval.ts';
import { baskingAimC, type MemberAnswer, type Moments, memberAnswer, momentsOf } from './member.ts';
import type { DialAdvice, Interval, PlanAnswer, SeasonAnswer } from './plan-answer.ts';
import { sprayAnswer, sprayVerdict } from './spray-verdict.ts';

export interface PlanInput {
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  /** Needs judged without simulation (space, safety, security), to be counted in the verdict. */
  readonly otherNeeds?: readonly NeedVerdict[];
  /** Versions of the box to try; 64 for an answer to rely on, 16 for a look. */
  readonly members: number;
  readonly seed: number;
}

export const settledMembers = 64;

/** Plan an enclosure. @param onMember called after each member with the share done, for progress; return false to stop early */
export function planEnclosure(input: PlanInput, onMember?: (doneFrac: number) => boolean): PlanAnswer {
  const { enclosure, climate, materials, priors, seed } = input;
  const geometry = boxGeometry(enclosure, materials);
  const sets = drawMembers(priors, Math.max(1, input.members), seed);
  const moments = momentsOf(enclosure);
  const members: MemberAnswer[] = [];
  let warm: SettledBox | undefined;
  for (const [i, parameters] of sets.entries()) {
    const answer = memberAnswer(modelFrom(geometry, parameters), moments, climate, warm);
    warm ??= answer.settled;
    members.push(answer);
    if (onMember && !onMember((i + 1) / sets.length)) break;
  }
  const best = modelFrom(geometry, sets[0]!);
  const winterDay = simulateDay(best, enclosure.room.winter);
  const summerDay = simulateDay(best, enclosure.room.summer);
  const dries = members.flatMap((m) => m.dries ?? []);
  const needs = [
    ...climateVerdicts(enclosure, climate, members, moments),
    ...sprayVerdict(enclosure, dries),
    ...(input.otherNeeds ?? []),
  ];
  const verdict = worstVerdict(needs.filter(counts).map((n) => n.verdict));
  return {
    verdict,
    headline: headlineOf(verdict, needs),
    needs,
    winter: season(
      input,
      enclosure.room.winter,
      winterDay,
      members,
      (m) => m.winterNight,
      (m) => m.winterDay,
    ),
    summer: season(
      input,
      enclosure.room.summer,
      summerDay,
      members,
      (m) => m.summerNight,
      (m) => m.summerDay,
    ),
    mid: {
      noon: members[0]!.midDay,
      night: members[0]!.midNight,
      noonInterval: placeIntervals(members.map((m) => m.midDay)),
      nightInterval: placeIntervals(members.map((m) => m.midNight)),
    },
    spray: sprayAnswer(enclosure, dries),
    dial: dialAdvice(input, best, members, moments),
    kWhPerDayWinter: winterDay.kWhPerDay,
    kWhPerDaySummer: summerDay.kWhPerDay,
    kWhPerYear: yearly(enclosure, members),
    members: members.length,
    seed,
    notes: [...winterDay.notes, ...summerDay.notes],
  };
}

/** Comfort points advise; every other group decides. */
const counts = (n: NeedVerdict): boolean => n.group !== 'comfort';

function headlineOf(verdict: Verdict, needs: readonly NeedVerdict[]): string {
  const bad = needs.filter((n) => counts(n) && n.verdict === verdict);
  if (verdict === 'holds') return 'Holds: every need is met in winter, in summer and between.';
  const first = bad[0];
  const rest = bad.length > 1 ? ` and ${bad.length - 1} more` : '';
  return verdict === 'fails'
    ? `Fails: ${first?.title ?? ''}${rest}.`
    : `Not known: ${first?.title ?? ''}${rest}; readings would settle it.`;
}

function season(
  { enclosure, climate }: PlanInput,
  roomDay: SeasonAnswer['roomDay'],
  day: SeasonAnswer['day'],
  members: readonly MemberAnswer[],
  night: (m: MemberAnswer) => SteadyAnswer,
  noon: (m: MemberAnswer) => SteadyAnswer,
): SeasonAnswer {
  return {
    roomDay,
    day,
    floorWantedFrac: floorShareWanted(day, enclosure.box.lengthM, enclosure.day, climate),
    night: night(members[0]!),
    noon: noon(members[0]!),
    nightInterval: placeIntervals(members.map(night)),
    noonInterval: placeIntervals(members.map(noon)),
  };
}

function placeIntervals(answers: readonly SteadyAnswer[]): Partial<Record<PlaceId, Interval>> {
  const out: Partial<Record<PlaceId, Interval>> = {};
  for (const place of placeIds) {
    const values = answers.map((a) => a.places[place]).filter((v): v is number => v !== null);
    if (values.length === answers.length) out[place] = intervalOf(values);
  }
  return out;
}

const say = coded('dial', {
  start: (dial: string, low: string, high: string, aim: string) =>
    `Start at ${dial} °C on the dial (likely ${low} to ${high} °C); trim until the basking surface reads ${aim} °C.`,
  expect: (dial: string, basking: string, low: string, high: string) =>
    `At ${dial} °C on the dial expect ${basking} °C (${low} to ${high} °C) at the basking surface; a thermometer there would let you trim it.`,
  none: (wanted: string, room: string) =>
    `No dial setting reaches ${wanted} °C at the basking surface in a room of ${room} °C.`,
});

function dialAdvice(
  input: PlanInput,
  best: ReturnType<typeof modelFrom>,
  members: readonly MemberAnswer[],
  moments: Moments,
): DialAdvice[] {
  const { enclosure, climate } = input;
  const main = mainThermostat(best);
  return enclosure.thermostats.map((t, i) => {
    const basking = intervalOf(members.map((m) => m.untrimmedDay.places['basking-surface']!));
    const probe = intervalOf(members.map((m) => m.untrimmedDay.places.probe ?? Number.NaN));
    const dials = members.map((m) => m.trimmedDialC).filter((v): v is number => v !== null);
    const reaches = intervalOf(members.map((m) => m.flatOutBaskingC)).median >= climate.baskingSurfaceC.low;
    const advised =
      i === main && dials.length >= ensembleBounds.holdsFrac * members.length && reaches ? intervalOf(dials) : null;
    const c = (valueC: number): string => valueC.toFixed(1);
    const words = advised
      ? say.start(c(advised.median), c(advised.low), c(advised.high), c(baskingAimC(climate)))
      : reaches
        ? say.expect(String(t.setDayC), c(basking.median), c(basking.low), c(basking.high))
        : say.none(String(climate.baskingSurfaceC.low), c(moments.winterDay.roomC));
    return {
      thermostatId: t.id,
      setDayC: t.setDayC,
      setNightC: t.setNightC,
      advisedDayC: advised,
      reachesWanted: reaches,
      expectBaskingC: basking,
      expectProbeC: probe,
      say: words.en,
      told: told(words),
    };
  });
}

/** Year's energy: day and night power of winter and summer in equal parts; our choice of a simple year. */
function yearly(enclosure: Enclosure, members: readonly MemberAnswer[]): Interval {
  const dayH = (enclosure.day.endH - enclosure.day.startH + 24) % 24 || 24;
  const watts = (a: SteadyAnswer) => a.heaterW.reduce((s, w) => s + w, 0);
  return intervalOf(
    members.map((m) => {
      const perDay = (day: SteadyAnswer, night: SteadyAnswer) =>
        (watts(day) * dayH + watts(night) * (24 - dayH)) / 1000;
      return (365 * (perDay(m.winterDay, m.winterNight) + perDay(m.summerDay, m.summerNight))) / 2;
    }),
  );
}
