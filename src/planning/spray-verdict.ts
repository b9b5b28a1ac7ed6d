// Does what is sprayed in a day dry in a day? What does not stays and makes the floor wetter every day, which no reading of
// one day shows. Judged where somebody sprays; leaves out how damp the air becomes (climate-verdicts.ts).
import { coded, type Sayable } from '../husbandry/coded.ts';
import type { NeedVerdict } from '../husbandry/need.ts';
import { need, ourChoice } from '../husbandry/rule.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { type Verdict, verdictFromShare } from '../shared/verdict.ts';
import { intervalOf } from './interval.ts';
import type { Interval, SprayAnswer } from './plan-answer.ts';
import { type DriesGPerDay, sprayedGPerDay } from './wet-floor.ts';

export const sprayNeedId = 'spray-dries';

const say = coded('spray', {
  wanted: (sprayed: string) => `at least ${sprayed} g dry in a day`,
  found: (winter: string, low: string, high: string, summer: string, lowSummer: string, highSummer: string) =>
    `winter ${winter} g a day (${low} to ${high} g), summer ${summer} g (${lowSummer} to ${highSummer} g)`,
  doubt: (share: string) => `In ${share} of 100 likely versions of this box all of it dries.`,
  dries: (winter: string, summer: string) =>
    `A floor that is wet all over dries ${winter} g a day in winter and ${summer} g in summer.`,
  sprayed: (sprayed: string) => `${sprayed} g a day are sprayed.`,
  stays: (winter: string, summer: string) =>
    `What does not dry stays and makes the floor wetter every day: by ${winter} g in winter, by ${summer} g in summer.`,
  staysWinter: (rest: string) =>
    `What does not dry stays and makes the floor wetter every day in winter: by ${rest} g.`,
  staysSummer: (rest: string) =>
    `What does not dry stays and makes the floor wetter every day in summer: by ${rest} g.`,
  mayStay: 'In the other versions some of it stays, and the floor gets wetter every day.',
  skin: 'A floor that stays wet harms the skin.',
  noMore: (winter: string, summer: string) =>
    `Spray no more than ${winter} g a day in winter and ${summer} g in summer: that much dries.`,
  moreAir: 'More air: more vent area, high and low. Then look at the temperatures again.',
  look: 'A look into the floor before each spraying, over a week with the box run empty: it must not get wetter from day to day.',
});

const grams = (v: number): string => v.toFixed(0);

/** What is sprayed and what dries, over the versions of a box; null where nobody sprays. */
export function sprayAnswer(enclosure: Enclosure, dries: readonly DriesGPerDay[]): SprayAnswer | null {
  const sprayed = sprayedGPerDay(enclosure);
  if (sprayed <= 0 || dries.length === 0) return null;
  return {
    sprayedGPerDay: sprayed,
    driesWinterGPerDay: intervalOf(dries.map((d) => d.winter)),
    driesSummerGPerDay: intervalOf(dries.map((d) => d.summer)),
  };
}

/** The need, or none where nobody sprays. @param dries for each version of the box */
export function sprayVerdict(enclosure: Enclosure, dries: readonly DriesGPerDay[]): NeedVerdict[] {
  const answer = sprayAnswer(enclosure, dries);
  if (answer === null) return [];
  const { sprayedGPerDay: sprayed, driesWinterGPerDay: winter, driesSummerGPerDay: summer } = answer;
  const share = dries.filter((d) => sprayed <= Math.min(d.winter, d.summer)).length / dries.length;
  const verdict = verdictFromShare(share);
  const doubt = say.doubt(String(Math.round(share * 100)));
  const both = say.dries(grams(winter.median), grams(summer.median));
  const left = leftSaid(sprayed, winter, summer);
  const reasonsOf = (v: Verdict): Sayable[] => {
    if (v === 'holds') return [both, doubt];
    const why = [say.sprayed(grams(sprayed)), both, left, say.skin];
    return v === 'fails' ? [...why, doubt] : [doubt, ...why];
  };
  return [
    need(
      {
        id: sprayNeedId,
        group: 'moisture',
        title: 'What is sprayed dries',
        verdict,
        wanted: say.wanted(grams(sprayed)),
        found: say.found(...spread(winter), ...spread(summer)),
        reasons: reasonsOf(verdict),
        fixes: [say.noMore(grams(sureGrams(winter)), grams(sureGrams(summer))), say.moreAir],
        ...(verdict === 'not-known' ? { settledBy: say.look } : {}),
        shareHolding: share,
      },
      ourChoice,
    ),
  ];
}

const spread = ({ median, low, high }: Interval): [string, string, string] => [grams(median), grams(low), grams(high)];

function leftSaid(sprayed: number, winter: Interval, summer: Interval): Sayable {
  const inWinter = sprayed - winter.median;
  const inSummer = sprayed - summer.median;
  if (inWinter > 0 && inSummer > 0) return say.stays(grams(inWinter), grams(inSummer));
  if (inWinter > 0) return say.staysWinter(grams(inWinter));
  return inSummer > 0 ? say.staysSummer(grams(inSummer)) : say.mayStay;
}

/** What dries in 95 of 100 versions, rounded down to what a person can measure out [g]; our choice. */
export const sureGrams = ({ low }: Interval): number => Math.floor(low / 5) * 5;
