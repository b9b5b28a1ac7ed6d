// Which tasks follow a release? They come from the plan, the proof and the animal, so two homes have different ones.
// Leaves out their words (words/) and what was answered.
import { addDays, dateOfDay, dayNumber, type IsoDate } from '../../animal/calendar.ts';
import { type CareFacts, factIn, numberOf } from '../../animal/care-facts.ts';
import type { AnimalEvent } from '../../animal/event.ts';
import type { MoveUp } from '../../animal/growth.ts';
import { massSeries, nextWeighing } from '../../animal/mass-series.ts';
import type { ControlKind, HeaterKind } from '../../physics/enclosure.ts';
import { burningHoursPerYear } from '../../planning/cost/lamp-life.ts';
import { firstColdNight, firstHotDay, type SeasonRoom, type SeasonTurn } from './season.ts';
import type { AftercareTask, Question, TaskKind } from './task.ts';

export interface FittedHeater {
  readonly id: string;
  readonly kind: HeaterKind;
  /** Which of several the plan counts it as, from 1; absent where it is the only one. */
  readonly n?: number;
  readonly fittedOn: IsoDate;
  readonly hoursPerDay: number;
  /** Mean share of its power over the hours in which it may heat, winter and summer, 0..1; null when no plan is kept. */
  readonly dutyFrac: number | null;
  /** Null without a thermostat. */
  readonly control: ControlKind | null;
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
  /** Name '' = a thermometer of the home without a name, told by its number n. */
  readonly instruments: readonly {
    readonly id: string;
    readonly name: string;
    readonly n?: number;
    readonly checkedOn: IsoDate | null;
  }[];
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
  const ask: readonly Question[] = ['well', 'ate', 'readings', 'massG', 'droppings'];
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
  const made: Made = {
    from: on,
    to: addDays(on, numberOf(care.aftercare, 'weighingGraceDays')),
    blanks: { days: numberOf(care.feeding, usual) },
    ask: ['massG'],
    sources: [factIn(care.feeding, usual).source, factIn(care.aftercare, 'firstWeighingDays').source],
  };
  return task('weigh', made, massSeries(events).at(-1)?.on ?? 'never');
}

function proofs({ releasedOn, southern, room, readRoomC }: AftercareInput, care: CareFacts): AftercareTask[] {
  const sources = [factIn(care.aftercare, 'weatherSpreadDays').source];
  const ask: readonly Question[] = ['day-of-readings'];
  const open = { from: releasedOn, to: addDays(releasedOn, numberOf(care.aftercare, 'openMatterDays')) };
  if (readRoomC === null)
    return [
      task('prove-home', { ...open, blanks: {}, ask, sources: [factIn(care.aftercare, 'openMatterDays').source] }),
    ];
  const facts = care.aftercare;
  const of = (kind: TaskKind, turn: SeasonTurn | null, endC: number): AftercareTask[] => {
    if (turn === null) return [];
    const blanks = { roomC: oneDecimal(turn.roomC), endC: oneDecimal(endC) };
    return [task(kind, { from: turn.from, to: turn.to, blanks, ask, sources }, String(blanks.roomC))];
  };
  return [
    ...of('prove-cold', firstColdNight(room, readRoomC.low, releasedOn, facts, southern), room.winter.lowC),
    ...of('prove-heat', firstHotDay(room, readRoomC.high, releasedOn, facts, southern), room.summer.highC),
  ];
}

/** Heaters that will outlast any keeper's calendar are left out; our choice. */
const longestYears = 10;

function renewal(heater: FittedHeater): AftercareTask[] {
  const { control, dutyFrac, fittedOn } = heater;
  // Without a thermostat it burns all its hours; where the share is not known it is taken so, which is early, not late.
  const share = control === null ? 1 : (dutyFrac ?? 1);
  const hoursPerYear = burningHoursPerYear(heater.hoursPerDay, share, control ?? 'dimming');
  const days = (lifeH: number) => (365 * lifeH) / hoursPerYear;
  if (!(days(heater.lifeLowH) <= longestYears * 365)) return [];
  const on = (lifeH: number) => dateOfDay(dayNumber(fittedOn) + Math.floor(days(lifeH)));
  const assumed = control !== null && dutyFrac === null;
  const blanks = {
    heater: heater.id,
    heaterKind: heater.kind,
    ...(heater.n === undefined ? {} : { heaterN: heater.n }),
    hoursPerDay: oneDecimal(hoursPerYear / 365),
    lifeH: heater.lifeLowH,
    fitted: fittedOn,
    ...(assumed ? { assumed: 1 } : {}),
  };
  const sources = [heater.lifeSource, 'OUR-CHOICE'];
  const [from, to] = [on(heater.lifeLowH), on(heater.lifeHighH)];
  return [task('renew-heater', { from, to, blanks, ask: ['fitted'], sources }, `${heater.id}:${fittedOn}`)];
}

function instrument(one: AftercareInput['instruments'][number], releasedOn: IsoDate, care: CareFacts): AftercareTask {
  const days = numberOf(care.aftercare, 'instrumentCheckDays');
  const grace = numberOf(care.aftercare, 'openMatterDays');
  // One that was never checked is due at once.
  const from = one.checkedOn === null ? releasedOn : later(addDays(one.checkedOn, days), releasedOn);
  const blanks = { name: one.name, days, ...(one.n === undefined ? {} : { n: one.n }) };
  const sources = [factIn(care.aftercare, 'instrumentCheckDays').source];
  const made: Made = { from, to: addDays(from, grace), blanks, ask: ['checked'], sources };
  return task('check-instrument', made, `${one.id}:${one.checkedOn ?? 'never'}`);
}

function moving({ moveUp, releasedOn }: AftercareInput): AftercareTask[] {
  if (moveUp === null) return [];
  const from = moveUp.now ? releasedOn : moveUp.earliest;
  if (from === null) return [];
  const to = moveUp.now ? releasedOn : (moveUp.likely ?? from);
  const blanks = { limitCm: Math.round(moveUp.limitCm) };
  const made: Made = { from, to: later(from, to), blanks, ask: ['box'], sources: ['FABENS1965', 'OUR-CHOICE'] };
  return [task('move-up', made, String(blanks.limitCm))];
}

const later = (a: IsoDate, b: IsoDate): IsoDate => (a > b ? a : b);
