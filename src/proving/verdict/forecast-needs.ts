// Will each need hold on the nights nobody has read? Share of the possible boxes that hold it at the deciding moment.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Spread } from '../../shared/interval.ts';
import { spreadOf } from '../../shared/interval.ts';
import { type Verdict, verdictFromShare } from '../../shared/verdict.ts';
import type { Forecast, InsidePlace } from '../calibration/forecast.ts';
import type { MomentId } from '../calibration/moments.ts';

export interface ForecastNeed {
  readonly id: 'coldest-night-warmth' | 'coldest-day-basking' | 'hottest-day-cool-end' | 'hottest-surface-forecast';
  readonly moment: MomentId;
  readonly place: InsidePlace;
  readonly verdict: Verdict;
  readonly shareHolding: number;
  readonly foundC: Spread;
  readonly low: number | null;
  readonly high: number | null;
  readonly roomC: number;
  readonly flatOutShare: number;
}

/** On the hottest day the cool end may stand this much above the wanted band [K]; our choice, the same as in a plan. */
export const hotDayAllowanceK = 2;

export function forecastNeeds(forecast: Forecast, climate: ClimateNeeds): ForecastNeed[] {
  const night = forecast.moments['coldest-night'];
  const refuge: InsidePlace = night.valuesC['warm-hide'] ? 'warm-hide' : 'warm-air';
  const need = (
    id: ForecastNeed['id'],
    moment: MomentId,
    place: InsidePlace,
    low: number | null,
    high: number | null,
    values: readonly number[],
  ): ForecastNeed => {
    const m = forecast.moments[moment];
    const share =
      values.filter((v) => (low === null || v >= low) && (high === null || v <= high)).length / values.length;
    return {
      id,
      moment,
      place,
      verdict: verdictFromShare(share),
      shareHolding: share,
      foundC: spreadOf(values),
      low,
      high,
      roomC: m.moment.roomC,
      flatOutShare: m.flatOutShare,
    };
  };
  const at = (moment: MomentId, place: InsidePlace) => forecast.moments[moment].valuesC[place] ?? [];
  return [
    need('coldest-night-warmth', 'coldest-night', refuge, climate.nightMinC.low, null, at('coldest-night', refuge)),
    // a little play: the keeper trims the dial as the seasons turn
    need(
      'coldest-day-basking',
      'coldest-day',
      'basking-surface',
      climate.baskingSurfaceC.low - 1,
      null,
      at('coldest-day', 'basking-surface'),
    ),
    need(
      'hottest-day-cool-end',
      'hottest-day',
      'cool-air',
      null,
      climate.coolAirC.high + hotDayAllowanceK,
      at('hottest-day', 'cool-air'),
    ),
    need(
      'hottest-surface-forecast',
      'coldest-day',
      'basking-surface',
      null,
      climate.reachableMaxC.alarm,
      forecast.moments['coldest-day'].hottestReachableC,
    ),
  ];
}
