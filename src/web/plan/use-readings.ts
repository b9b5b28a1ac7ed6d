// Which numbers hang on the drawing: those of the hour looked at when its day is there, else the settled state.
import { useMemo } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { type Readings, readingsFromDay, readingsFromSteady } from '../pictures/readings.ts';
import type { SteadyOutcome } from '../worker/steady-client.ts';
import type { PlanRun } from '../worker/use-plan.ts';
import type { Moment } from './moment.ts';

export function useReadings(
  enclosure: Enclosure | null,
  moment: Moment,
  steady: SteadyOutcome | null,
  run: PlanRun,
): Readings | null {
  return useMemo(() => {
    if (!enclosure) return null;
    const { season, at } = moment;
    const day = run.daysFor === enclosure ? run.days?.[season] : undefined;
    if (typeof at === 'number' && day) return readingsFromDay(day, at, enclosure.day);
    if (!steady?.answer) return null;
    const answer = run.forEnclosure === enclosure ? run.plan?.[season] : undefined;
    const interval =
      typeof at === 'number' ? {} : ((at === 'noon' ? answer?.noonInterval : answer?.nightInterval) ?? {});
    // An answer that is still on its way keeps its own moment; the range belongs to the present one only.
    const present = steady.enclosure === enclosure;
    return readingsFromSteady(steady.answer, steady.conditions.isDay, present ? interval : {});
  }, [enclosure, moment, steady, run]);
}
