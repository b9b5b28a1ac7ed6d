// Which tasks follow a release? They come from the plan, the proof and the animal, so two homes have different ones.
// Leaves out their words (words/) and what was answered.
import { addDays, dateOfDay, dayNumber, type IsoDate } from '../../animal/calendar.ts';
import { type CareFacts, factIn, numberOf } from '../../animal/care-facts.ts';
import type { AnimalEvent } from '../../animal/event.ts';
import type { MoveUp } from '../../animal/growth.ts';
import { nextWeighing } from '../../animal/mass-series.ts';
import type { ControlKind } from '../../physics/enclosure.ts';
import { burningHoursPerYear } from '../../planning/cost/lamp-life.ts';
import { firstColdNight, firstHotDay, type SeasonRoom, type SeasonTurn } from './season.ts';
import type { AftercareTask, Question, TaskKind } from './task.ts';

export interface FittedHeater {
  readonly id: string;
  readonly fittedOn: IsoDate;
  readonly hoursPerDay: number;
  /** Mean share of its power over a simulated year, 0..1. */
  readonly dutyFrac: number;
  readonly control: ControlKind;
  /** Shortest and longest usual life [h]. */
  readonly lifeLowH: number;
  readonly lifeHighH: number;
  readonly lifeSource: string;
}

export interface AftercareInput {
  readonly releasedOn: IsoDate;
  readonly southern: boolean;
  readonly growing: boolean;
  readonly events: readonly AnimalEvent[];
  /** First meal taken in the new home; null while none was. */
  readonly firstMealOn: IsoDate | null;
  /** Day on which it is to be fed next. */
  readonly nextMealOn: IsoDate | null;
  readonly room: SeasonRoom;
  /** Lowest and highest temperature of the room while the home was read [degC]; null when the room was not read. */
  readonly readRoomC: { readonly low: number; readonly high: number } | null;
  readonly heaters: readonly FittedHeater[];
  readonly instruments: readonly { readonly id: string; readonly name: string; readonly checkedOn: IsoDate | null }[];
  readonly moveUp: MoveUp | null;
}

const oneDecimal = (x: number): number => Math.round(x * 10) / 10;

/** The tasks by day. Checks: laws in tasks.test.ts. */
export function aftercareTasks(input: AftercareInput, care: CareFacts): readonly AftercareTask[] {
  const all = [
    ...calls(input, care),
    weighing(input, care),
    ...proofs(input, care),
    ...input.heaters.flatMap((heater) => renewal(heater)),
    ...input.instruments.map((one) => instrument(one, input.releasedOn, care)),
    ...moving(input),
  ];
  return all.sort((a, b) => (a.to === b.to ? (a.key < b.key ? -1 : 1) : a.to < b.to ? -1 : 1));
}

type Made = Omit<AftercareTask, 'key' | 'kind'>;
const task = (kind: TaskKind, made: Made, of?: string): AftercareTask => ({
  key: of === undefined ? kind : `${kind}:${of}`,
  kind,
  ...made,
});

function calls({ releasedOn, firstMealOn, nextMealOn }: AftercareInput, care: CareFacts): AftercareTask[] {
  const ask: readonly Question[] = ['ate', 'readings', 'massG', 'droppings'];
  const after = (kind: TaskKind, fact: string, day: IsoDate): AftercareTask => {
    const on = addDays(day, numberOf(care.aftercare, fact));
    const days = numberOf(care.aftercare, fact);
    return task(kind, {
      from: on,
      to: on,
      blanks: { days, day },
      ask,
      sources: [factIn(care.aftercare, fact).source],
    });
  };
  const meal = firstMealOn ?? (nextMealOn !== null && nextMealOn > releasedOn ? nextMealOn : releasedOn);
  return [
    after('call-first', 'firstCallDays', releasedOn),
    after('call-week', 'weekCallDays', releasedOn),
    after('call-meal', 'afterMealCallDays', meal),
  ];
}

function weighing({ releasedOn, events, growing }: AftercareInput, care: CareFacts): AftercareTask {
  const next = nextWeighing(events, care, growing, releasedOn).on;
  const settled = addDays(releasedOn, numberOf(care.aftercare, 'firstWeighingDays'));
  const on = later(next, settled);
  const usual = growing ? 'weighYoungDays' : 'weighAdultDays';
  return task('weigh', {
    from: on,
    to: on,
    blanks: { days: numberOf(care.feeding, usual) },
    ask: ['massG'],
    sources: [factIn(care.feeding, usual).source, factIn(care.aftercare, 'firstWeighingDays').source],
  });
}

function proofs({ releasedOn, southern, room, readRoomC }: AftercareInput, care: CareFacts): AftercareTask[] {
  const sources = [factIn(care.aftercare, 'weatherSpreadDays').source];
  const ask: readonly Question[] = ['day-of-readings'];
  if (readRoomC === null) return [task('prove-home', { from: releasedOn, to: releasedOn, blanks: {}, ask, sources })];
  const facts = care.aftercare;
  const of = (kind: TaskKind, turn: SeasonTurn | null, endC: number): AftercareTask[] => {
    if (turn === null) return [];
    const blanks = { roomC: oneDecimal(turn.roomC), outsideC: Math.round(turn.outsideC), endC: oneDecimal(endC) };
    return [task(kind, { from: turn.from, to: turn.to, blanks, ask, sources })];
  };
  return [
    ...of('prove-cold', firstColdNight(room, readRoomC.low, releasedOn, facts, southern), room.winter.lowC),
    ...of('prove-heat', firstHotDay(room, readRoomC.high, releasedOn, facts, southern), room.summer.highC),
  ];
}

/** Heaters that will outlast any keeper's calendar are left out; our choice. */
const longestYears = 10;

function renewal(heater: FittedHeater): AftercareTask[] {
  const hoursPerYear = burningHoursPerYear(heater.hoursPerDay, heater.dutyFrac, heater.control);
  const days = (lifeH: number) => (365 * lifeH) / hoursPerYear;
  if (!(days(heater.lifeLowH) <= longestYears * 365)) return [];
  const on = (lifeH: number) => dateOfDay(dayNumber(heater.fittedOn) + Math.floor(days(lifeH)));
  const blanks = {
    heater: heater.id,
    hoursPerDay: oneDecimal(hoursPerYear / 365),
    lifeH: heater.lifeLowH,
    fitted: heater.fittedOn,
  };
  const sources = [heater.lifeSource, 'OUR-CHOICE'];
  const [from, to] = [on(heater.lifeLowH), on(heater.lifeHighH)];
  return [task('renew-heater', { from, to, blanks, ask: ['fitted'], sources }, heater.id)];
}

function instrument(one: AftercareInput['instruments'][number], releasedOn: IsoDate, care: CareFacts): AftercareTask {
  const days = numberOf(care.aftercare, 'instrumentCheckDays');
  // One that was never checked is due at once.
  const on = one.checkedOn === null ? releasedOn : addDays(one.checkedOn, days);
  const blanks = { name: one.name, days };
  const sources = [factIn(care.aftercare, 'instrumentCheckDays').source];
  return task('check-instrument', { from: on, to: on, blanks, ask: ['checked'], sources }, one.id);
}

function moving({ moveUp, releasedOn }: AftercareInput): AftercareTask[] {
  if (moveUp === null) return [];
  const from = moveUp.now ? releasedOn : moveUp.earliest;
  if (from === null) return [];
  const to = moveUp.now ? releasedOn : (moveUp.likely ?? from);
  const blanks = { limitCm: Math.round(moveUp.limitCm) };
  return [task('move-up', { from, to: later(from, to), blanks, ask: ['box'], sources: ['FABENS1965', 'OUR-CHOICE'] })];
}

const later = (a: IsoDate, b: IsoDate): IsoDate => (a > b ? a : b);
