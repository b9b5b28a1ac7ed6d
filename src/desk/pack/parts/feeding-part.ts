// Part 4: the next meal of this animal, how much of what, how often, and when it is weighed.
import { addDays, type IsoDate } from '../../../animal/calendar.ts';
import { factIn, numberOf } from '../../../animal/care-facts.ts';
import { mealAdvice, nextFeed } from '../../../animal/feeding.ts';
import { sayPrey } from '../../../animal/words/prey.ts';
import { rangeOf } from '../../../husbandry/species-facts.ts';
import type { Block } from '../blocks.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';

const preyShown = 3;

const everySaid = (low: string, high: string, { w }: Tongue): string =>
  low === high ? w.feeding.everyOne(low) : w.feeding.everyIs(low, high);

export function feedingPart(subject: PackSubject, tongue: Tongue): readonly Block[] {
  const { w, m, cite } = tongue;
  const { animal, care, facts } = subject;
  const weighDays = numberOf(care.feeding, animal.stage === 'adult' ? 'weighAdultDays' : 'weighYoungDays');
  const weighFact = factIn(care.feeding, animal.stage === 'adult' ? 'weighAdultDays' : 'weighYoungDays');
  const loss = factIn(care.condition, 'lossAlarmPct');
  const interval = animal.stage === null ? null : rangeOf(animal.species, animal.stage, 'feedIntervalDays');
  const meal = adviceFor(subject);
  const prey = preyInWords(subject, tongue);
  const widest = meal?.widestMm == null ? '' : `; ${w.feeding.widest(width(meal.widestMm, tongue))}`;
  const rows: (readonly [string, string])[] = [
    [w.feeding.next, nextMeal(subject, tongue)],
    [
      w.feeding.every,
      interval === null
        ? w.feeding.nextUnknown
        : `${everySaid(m.number(interval.low, 0), m.number(interval.high, 0), tongue)}${cite(interval)}`,
    ],
    [w.feeding.meal, meal === null ? w.feeding.mealUnknown : mealInWords(meal, tongue)],
    [w.feeding.prey, `${prey ?? w.feeding.mealUnknown}${widest}${cite(factIn(care.feeding, 'preyWidthShareFrac'))}`],
    [w.feeding.how, `${w.feeding.howIs}${cite(facts.faultCases.find((one) => one.id === 'E12')!)}`],
    [
      w.feeding.up,
      `${w.feeding.upIs(m.number(numberOf(care.feeding, 'regurgitationRestDays'), 0))}${cite(factIn(care.feeding, 'regurgitationRestDays'))}`,
    ],
    [w.feeding.weighing, `${w.feeding.weighIs(m.number(weighDays, 0))}${cite(weighFact)}`],
    [w.feeding.loss, `${w.feeding.lossIs(m.text('percent', numberOf(care.condition, 'lossAlarmPct')))}${cite(loss)}`],
  ];
  return [{ kind: 'list', items: rows.map(([lead, said]) => ({ lead, text: said })) }];
}

function adviceFor({ animal, facts, care }: PackSubject) {
  const { species, stage, massG } = animal;
  return stage === null || massG === null ? null : mealAdvice(species, stage, massG, Object.values(facts.prey), care);
}

/** The prey that fits, in words; null when the mass of the animal is not known or nothing fits. */
export function preyInWords(subject: PackSubject, { w, language }: Tongue): string | null {
  const fits = adviceFor(subject)?.prey.slice(0, preyShown) ?? [];
  if (fits.length === 0) return null;
  return fits.map((one) => w.feeding.preyIs(one.count, sayPrey(one.preyId, language))).join(` ${w.feeding.or} `);
}

function mealInWords(meal: NonNullable<ReturnType<typeof mealAdvice>>, { w, m, cite }: Tongue): string {
  const digits = m.settings.mass === 'oz' ? 1 : meal.highG < 20 ? 1 : 0;
  const { low, high, value } = meal.share;
  const share = m.span('percent', low ?? Number(value), high ?? Number(value));
  return `${w.feeding.mealIs(m.text('mass', meal.lowG, digits), m.text('mass', meal.highG, digits), share)}${cite(meal.share)}`;
}

const width = (mm: number, { m }: Tongue): string =>
  m.settings.length === 'in' ? m.text('length', mm / 1000, 1) : `${m.number(mm, 0)}\u00a0mm`;

/** Its own rhythm, but not before the rest that every animal has after a move. */
function nextMeal(subject: PackSubject, { w, day }: Tongue): string {
  const { animal, care, printedOn, southern } = subject;
  const { species, stage, events } = animal;
  const situation = { species, stage, events, facts: care, movedOn: null, today: printedOn, southern };
  const next = nextFeed(situation);
  if (next.state === 'not-known') return w.feeding.nextUnknown;
  if (next.from === null) return w.feeding.nextWait;
  const rested = addDays(homeFrom(subject), numberOf(care.feeding, 'restAfterMoveDays'));
  const from = later(next.from, rested);
  return next.to === null || next.to <= from
    ? w.feeding.nextFrom(day(from))
    : w.feeding.nextIs(day(from), day(next.to));
}

const later = (a: IsoDate, b: IsoDate): IsoDate => [a, b].sort().at(-1) ?? a;

/** The day from which it is in its new home; of a draft, the day of printing. */
export const homeFrom = ({ state, ended, printedOn }: PackSubject): IsoDate =>
  state === 'released' && ended !== null ? ended.on : printedOn;
