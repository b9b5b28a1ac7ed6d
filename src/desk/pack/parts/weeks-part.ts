// Part 3: the first two weeks, day by day. Days come from data/; where the day of release is known they carry their date.
import { addDays } from '../../../animal/calendar.ts';
import { factIn, numberOf } from '../../../animal/care-facts.ts';
import type { Block } from '../blocks.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';
import { preyInWords } from './feeding-part.ts';

export function weeksPart(subject: PackSubject, tongue: Tongue): readonly Block[] {
  const { w, cite } = tongue;
  const { feeding, aftercare } = subject.care;
  const firstCall = numberOf(aftercare, 'firstCallDays');
  const weekCall = numberOf(aftercare, 'weekCallDays');
  const weigh = numberOf(aftercare, 'firstWeighingDays');
  const rest = numberOf(feeding, 'restAfterMoveDays');
  const hours = numberOf(feeding, 'handlingRestHours');
  const refusals = numberOf(feeding, 'refusalsToCheckCount');
  const callCite = cite(factIn(aftercare, 'firstCallDays'));
  const restCite = cite(factIn(feeding, 'restAfterMoveDays'), factIn(feeding, 'handlingRestHours'));
  const start = subject.state === 'released' ? (subject.ended?.on ?? null) : null;
  const day = (from: number, to?: number): string => {
    const plain = to === undefined || to <= from ? w.weeks.day(String(from)) : w.weeks.days(String(from), String(to));
    return start === null ? plain : w.weeks.dated(plain, tongue.day(addDays(start, from)));
  };
  const prey = preyInWords(subject, tongue) ?? w.feeding.mealUnknown;
  return [
    {
      kind: 'table',
      head: w.weeks.head,
      widths: start === null ? [1, 4.4] : [1.35, 4.2],
      rows: [
        [day(0), w.weeks.zero],
        [day(1, firstCall), `${w.weeks.first} ${w.weeks.call}${callCite}`],
        [day(rest, weekCall - 1), `${w.weeks.firstMeal(prey)} ${w.weeks.afterMeal(String(hours))}${restCite}`],
        [day(weekCall), `${w.weeks.week}${callCite}`],
        [day(weekCall + 1, weigh - 1), `${w.weeks.settle} ${w.weeks.refused(String(refusals))}`],
        [day(weigh), w.weeks.weigh],
      ],
    },
  ];
}
