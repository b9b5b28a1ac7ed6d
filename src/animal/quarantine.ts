// Is the quarantine over, by time, by tests, or by both? Is the mite watch over? Is a treatment running?
// Leaves out what a treatment is: that is the vet's word, written down as given.
import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import { type CareFacts, numberOf } from './care-facts.ts';
import { type AnimalEvent, type ClearBy, eventsOf } from './event.ts';

export interface QuarantineState {
  readonly running: boolean;
  readonly startedOn: IsoDate | null;
  readonly where: string;
  readonly clearBy: ClearBy;
  readonly daysDone: number;
  readonly daysWanted: number;
  readonly overOn: IsoDate | null;
  readonly testsWanted: readonly string[];
  /** Wanted tests without a clear result after the start. */
  readonly testsOpen: readonly string[];
  /** Time, tests or both, as chosen, are fulfilled: somebody may end it. */
  readonly mayEnd: boolean;
}

const none: QuarantineState = {
  running: false,
  startedOn: null,
  where: '',
  clearBy: 'time',
  daysDone: 0,
  daysWanted: 0,
  overOn: null,
  testsWanted: [],
  testsOpen: [],
  mayEnd: false,
};

/** Names of tests, written apart by commas or lines. */
export const testNames = (text: string): readonly string[] =>
  text
    .split(/[,;\n]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');

export function quarantineState(events: readonly AnimalEvent[], today: IsoDate): QuarantineState {
  const steps = eventsOf(events, 'quarantine').filter((event) => event.on <= today);
  const last = steps.at(-1);
  if (!last || last.body.step === 'end') return none;
  const start = last;
  const { clearBy, days, tests, where } = start.body;
  const daysDone = daysBetween(start.on, today);
  const results = eventsOf(events, 'test').filter((event) => event.on >= start.on && event.on <= today);
  const testsWanted = testNames(tests);
  // The latest result of a test counts, so that a later "not clear" opens it again.
  const testsOpen = testsWanted.filter(
    (name) =>
      results.findLast((event) => event.body.name.trim().toLowerCase() === name.toLowerCase())?.body.result !== 'clear',
  );
  const timeDone = daysDone >= days;
  const testsDone = testsWanted.length > 0 && testsOpen.length === 0;
  const mayEnd = clearBy === 'time' ? timeDone : clearBy === 'tests' ? testsDone : timeDone && testsDone;
  const overOn = addDays(start.on, days);
  return {
    running: true,
    startedOn: start.on,
    where,
    clearBy,
    daysDone,
    daysWanted: days,
    overOn,
    testsWanted,
    testsOpen,
    mayEnd,
  };
}

/** Days a new quarantine is given unless the shop says otherwise: longer for boas (common practice).
 *  @param family e.g. "Boidae" */
export const usualQuarantineDays = (facts: CareFacts, family: string): number =>
  numberOf(facts.quarantine, family === 'Boidae' ? 'quarantineBoidDays' : 'quarantineDays');

export interface MiteWatch {
  readonly watching: boolean;
  readonly lastSeenOn: IsoDate | null;
  /** First day without watch. */
  readonly overOn: IsoDate | null;
  readonly daysLeft: number;
}

/** The watch runs from the last mite seen; seeing one more begins it anew. Looks without a find do not shorten it. */
export function miteWatch(events: readonly AnimalEvent[], facts: CareFacts, today: IsoDate): MiteWatch {
  const noted = eventsOf(events, 'mites').filter((event) => event.body.seen && event.on <= today);
  const examined = eventsOf(events, 'examination').filter(
    (event) => event.on <= today && startsClock(event.body.answers, facts, 'mites'),
  );
  const days = [...noted, ...examined].map((event) => event.on).sort();
  const lastSeenOn = days.at(-1) ?? null;
  if (lastSeenOn === null) return { watching: false, lastSeenOn, overOn: null, daysLeft: 0 };
  const overOn = addDays(lastSeenOn, numberOf(facts.quarantine, 'mitesWatchDays'));
  const daysLeft = Math.max(0, daysBetween(today, overOn));
  return { watching: daysLeft > 0, lastSeenOn, overOn, daysLeft };
}

function startsClock(answers: Readonly<Record<string, readonly string[]>>, facts: CareFacts, clock: string): boolean {
  return facts.examination.some((step) =>
    step.signs.some((sign) => sign.starts === clock && (answers[step.id] ?? []).includes(sign.id)),
  );
}

export interface TreatmentState {
  readonly running: readonly { readonly what: string; readonly since: IsoDate; readonly vet: string }[];
}

/** Treatments that were begun and not ended; each is told from others by its own words. */
export function treatmentState(events: readonly AnimalEvent[], today: IsoDate): TreatmentState {
  const running = new Map<string, { what: string; since: IsoDate; vet: string }>();
  for (const { on, body } of eventsOf(events, 'treatment')) {
    if (on > today) continue;
    const key = body.what.trim().toLowerCase();
    if (body.step === 'end') running.delete(key);
    // A dose that was given without a beginning counts as one: the animal is under treatment.
    else if (!running.has(key)) running.set(key, { what: body.what, since: on, vet: body.vet });
  }
  return { running: [...running.values()] };
}
