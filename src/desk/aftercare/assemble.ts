// From the rows of a placement to what its tasks are made of: the release, the animal with what was told of it since,
// the room of the plan, what the proof read, the heaters and how much they work.
import type { AnimalEvent } from '../../animal/event.ts';
import { nextFeed } from '../../animal/feeding.ts';
import { growthBand, lengthSeries, moveUp } from '../../animal/growth.ts';
import type { Enclosure, Heater } from '../../physics/enclosure.ts';
import type { AftercareInput, FittedHeater } from '../../proving/aftercare/tasks.ts';
import type { HomeFacts, HomeInstrument } from '../../records/aftercare-inputs.ts';
import type { AnimalRecord, DeskSurroundings } from '../animal-record.ts';
import { answersIn, type Followed, type FollowedAnswer } from './followed-body.ts';

export interface PlacementFacts {
  readonly releasedOn: string;
  readonly followed: readonly Followed[];
  readonly home: HomeFacts;
  readonly instruments: readonly HomeInstrument[];
  readonly record: AnimalRecord;
}

/** A home whose enclosure cannot be read has no tasks of room and kit; the rest still stands. */
export function assembled(facts: PlacementFacts, around: DeskSurroundings): AftercareInput {
  const { releasedOn, record, home } = facts;
  const answers = answersIn(facts.followed);
  const events = [...record.events, ...toldEvents(answers)];
  const box = enclosureOf(home.enclosure);
  const feed = nextFeed({
    species: record.species,
    stage: record.stage,
    events,
    facts: around.care,
    movedOn: releasedOn,
    today: releasedOn,
    southern: around.southern,
  });
  const since = events.flatMap((e) =>
    e.kind === 'feeding' && e.body.outcome === 'taken' && e.on >= releasedOn ? [e.on] : [],
  );
  return {
    releasedOn,
    southern: around.southern,
    growing: record.stage !== 'adult',
    events,
    firstMealOn: since.sort()[0] ?? null,
    nextMealOn: feed.from,
    room: box?.room ?? noCourse,
    readRoomC: home.roomLowC === null || home.roomHighC === null ? null : { low: home.roomLowC, high: home.roomHighC },
    heaters: box ? box.heaters.flatMap((heater) => fitted(heater, box, facts, answers, around)) : [],
    instruments: instruments(facts, box, answers),
    moveUp: box ? moving(box, events, record, around) : null,
  };
}

/** A room without a course through the year: no first cold night is looked for. */
const noCourse: AftercareInput['room'] = {
  winter: { lowC: 20, highC: 20, rhPct: 50, sunPeakWPerM2: 0 },
  summer: { lowC: 20, highC: 20, rhPct: 50, sunPeakWPerM2: 0 },
};

function enclosureOf(raw: unknown): Enclosure | null {
  const box = raw as Enclosure | null;
  const readable =
    typeof box === 'object' && box !== null && Array.isArray(box.heaters) && box.room?.winter && box.box && box.day;
  return readable ? box : null;
}

/** What was told since, as entries like the shop's own: they move the next weighing and the growth. */
function toldEvents(answers: readonly FollowedAnswer[]): AnimalEvent[] {
  return answers.flatMap(({ id, by, body: { on, answers: said } }) => {
    const entry = (kind: string, day: string, body: object) =>
      ({ id: `${id}-${kind}`, kind, on: day, at: `${day}T12:00:00.000Z`, by, body }) as unknown as AnimalEvent;
    const out: AnimalEvent[] = [];
    if (said.massG !== undefined) out.push(entry('weighing', on, { massG: said.massG }));
    if (said.lengthCm !== undefined)
      out.push(
        entry('length', on, { totalLengthCm: said.lengthCm, snoutVentMm: null, errorMm: null, how: 'estimate' }),
      );
    const outcome = said.ate === undefined ? null : outcomeOf[said.ate];
    if (outcome) out.push(entry('feeding', said.mealOn ?? on, { preyId: '', preyMassG: null, count: 1, outcome }));
    return out;
  });
}

const outcomeOf = { taken: 'taken', refused: 'refused', 'brought-up': 'regurgitated', 'not-offered': null } as const;

function fitted(
  heater: Heater,
  box: Enclosure,
  { releasedOn, home }: PlacementFacts,
  answers: readonly FollowedAnswer[],
  around: DeskSurroundings,
): FittedHeater[] {
  const life = around.facts.heaters[heater.kind]?.facts.lifeHours;
  const lowH = typeof life?.low === 'number' ? life.low : life?.value;
  if (life === undefined || typeof lowH !== 'number') return [];
  const { startH, endH } = box.day;
  const hoursPerDay = heater.period === 'day' ? (endH - startH + 24) % 24 || 24 : 24;
  // The plan keeps the share of all heaters through 24 hours; of several each is taken to bear the same share.
  const { winterDutyFrac: winter, summerDutyFrac: summer } = home;
  const wholeDay = winter === null || summer === null ? null : (winter + summer) / 2;
  const renewed = answers.flatMap(({ body }) =>
    body.task.kind === 'renew-heater' && body.task.blanks.heater === heater.id && body.answers.fittedOn
      ? [body.answers.fittedOn]
      : [],
  );
  return [
    {
      id: heater.id,
      kind: heater.kind,
      ...(box.heaters.length > 1 ? { n: box.heaters.indexOf(heater) + 1 } : {}),
      fittedOn: renewed.sort().at(-1) ?? releasedOn,
      hoursPerDay,
      dutyFrac: wholeDay === null ? null : Math.min(1, (wholeDay * 24) / hoursPerDay),
      control: box.thermostats.find((one) => one.id === heater.thermostatId)?.control ?? null,
      lifeLowH: lowH,
      lifeHighH: typeof life.high === 'number' ? life.high : lowH,
      lifeSource: life.source,
    },
  ];
}

/** Instruments of the shop that stay in the home, else its own thermometers as far as they can be checked in ice. */
function instruments(
  facts: PlacementFacts,
  box: Enclosure | null,
  answers: readonly FollowedAnswer[],
): AftercareInput['instruments'] {
  const checked = (id: string): string | null =>
    answers
      .flatMap(({ body }) =>
        body.task.kind === 'check-instrument' &&
        body.task.key.startsWith(`check-instrument:${id}:`) &&
        body.answers.iceShownC !== undefined
          ? [body.on]
          : [],
      )
      .sort()
      .at(-1) ?? null;
  const newest = (a: string | null, b: string | null) => (a === null || (b !== null && b > a) ? b : a);
  if (facts.instruments.length > 0)
    return facts.instruments.map((one) => ({
      id: one.instrumentId,
      name: one.name,
      checkedOn: newest(one.checkedAt?.toISOString().slice(0, 10) ?? null, checked(one.instrumentId)),
    }));
  return (box?.thermometers ?? []).flatMap((one, i) =>
    one.kind === 'digital-probe'
      ? [{ id: `own-${i + 1}`, name: '', n: i + 1, checkedOn: checked(`own-${i + 1}`) }]
      : [],
  );
}

/** Longest body that lies stretched in the box: its length; the shop's space standard may ask for more or less. */
function moving(
  box: Enclosure,
  events: readonly AnimalEvent[],
  { species }: AnimalRecord,
  around: DeskSurroundings,
): AftercareInput['moveUp'] {
  const band = growthBand(species, around.care);
  const last = lengthSeries(events).at(-1);
  return band && last ? moveUp(band, last, box.box.lengthM * 100, 1) : null;
}
