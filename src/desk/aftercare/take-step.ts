// Something is told or done about a task: an answer, nobody reached, set aside with a reason, taken back, looked at.
// Everything is written as an event of the placement; sent twice with one token it is written once.
import { type CareFacts, numberOf } from '../../animal/care-facts.ts';
import { massSeries } from '../../animal/mass-series.ts';
import { type TriageAnswer, triage } from '../../animal/triage.ts';
import {
  type AftercareAnswers,
  answerFaults,
  concernLimits,
  concernsOf,
  lossOf,
  readingsTold,
  settles,
} from '../../proving/aftercare/answer.ts';
import type { AftercareTask } from '../../proving/aftercare/task.ts';
import { dueOfPlacement, releasedPlacement } from '../../records/aftercare.ts';
import { followedEvents } from '../../records/aftercare-inputs.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { addPlacementEvent, placementById } from '../../records/placements.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import { type AnimalRecord, recordOf, surroundings } from '../animal-record.ts';
import type { DeskContext } from '../desk-context.ts';
import { placementFaults } from '../placement-faults.ts';
import { latestDayOf, todayOf } from '../today.ts';
import { aftercareFaults } from './aftercare-faults.ts';
import { answersIn, type FollowedBody, standing, type Via } from './followed-body.ts';
import { aftercareUpToDate } from './rebuild.ts';

export type AftercareStep =
  | {
      readonly what: 'answer';
      readonly key: string;
      readonly on?: string;
      readonly answers: Readonly<Record<string, unknown>>;
    }
  | { readonly what: 'not-reached'; readonly key: string }
  | { readonly what: 'set-aside'; readonly key: string; readonly why: string }
  | { readonly what: 'undone'; readonly of: string }
  | { readonly what: 'looked-at'; readonly of: string };

export interface TakenStep {
  readonly id: string;
  /** True when this token was written before and nothing was added. */
  readonly again: boolean;
  /** For an answer that asks for a second look: what first. The enclosure before the vet, unless it cannot wait. */
  readonly triage: TriageAnswer | null;
}

/** Faults: "PLACEMENT_UNKNOWN", "AFTERCARE_NOT_RELEASED", "AFTERCARE_TASK", "AFTERCARE_ANSWER", "AFTERCARE_DAY",
 *  "AFTERCARE_WHY", "AFTERCARE_EVENT". */
export async function takeStep(
  desk: DeskContext,
  placementId: string,
  step: AftercareStep,
  from: { readonly token: string; readonly via: Via },
): Promise<Result<TakenStep>> {
  const placement = await placementById(desk.db, placementId);
  if (placement === undefined || placement.branchId !== desk.actor.branchId)
    return bad([placementFaults.unknown(placementId)]);
  await aftercareUpToDate(desk);
  const released = await releasedPlacement(desk.db, placementId);
  if (released === undefined) return bad([aftercareFaults.notReleased]);
  const around = await surroundings(desk);
  const record = await recordOf(desk, around, placement.animalId);
  if (!record.ok) return record;
  // An answer that was written already stays as it is, whatever became of its task since.
  const events = await followedEvents(desk.db, [placementId]);
  const latest = latestDayOf(desk.clock);
  const made = await bodyOf(desk, placementId, step, {
    via: from.via,
    days: { from: released.releasedOn, latest, today: todayOf(desk.clock) },
    record: record.value,
    events,
  });
  const known = made.ok ? null : await tokenKnown(desk, placementId, from.token);
  if (!made.ok) return known ? good({ id: known, again: true, triage: null }) : made;
  const writer = { at: desk.clock.now(), by: from.via === 'keeper' ? 'keeper' : desk.actor.name };
  const added = await desk.db
    .transaction()
    .execute((tx) =>
      addPlacementEvent(tx, placementId, { kind: 'aftercare', body: made.value, token: from.token }, writer),
    );
  if (!added.ok) return bad([aftercareFaults.notReleased]);
  await aftercareUpToDate(desk);
  const second = made.value.what === 'answer' && made.value.concerns.length > 0;
  const body = made.value;
  return good({
    id: added.id,
    again: added.again,
    triage: second && body.what === 'answer' ? triageOf(body, record.value, around.care) : null,
  });
}

interface Surrounding {
  readonly via: Via;
  readonly days: { readonly from: string; readonly latest: string; readonly today: string };
  readonly record: AnimalRecord;
  readonly events: Awaited<ReturnType<typeof followedEvents>>;
}

async function bodyOf(
  desk: DeskContext,
  placementId: string,
  step: AftercareStep,
  around: Surrounding,
): Promise<Result<FollowedBody>> {
  const { days, events } = around;
  if (step.what === 'undone' || step.what === 'looked-at') {
    const there = standing(events).some((one) => one.id === step.of);
    return there ? good({ what: step.what, of: step.of }) : bad([aftercareFaults.eventUnknown(step.of)]);
  }
  const row = (await dueOfPlacement(desk.db, placementId)).find((one) => one.key === step.key && one.state === 'open');
  if (row === undefined) return bad([aftercareFaults.taskUnknown(step.key)]);
  const { key, from, to } = row;
  const task = { key, kind: row.kind, from, to, ...row.task } as unknown as AftercareTask;
  if (step.what === 'not-reached') return good({ what: 'not-reached', task, on: days.today });
  if (step.what === 'set-aside') {
    const why = step.why.trim();
    if (why.length < 3 || why.length > 500) return bad([aftercareFaults.needsWhy]);
    return good({ what: 'set-aside', task, on: days.today, why });
  }
  return answerBody(task, step, around);
}

function answerBody(
  task: AftercareTask,
  step: Extract<AftercareStep, { readonly what: 'answer' }>,
  { via, days, record, events }: Surrounding,
): Result<FollowedBody> {
  const { care } = allFacts();
  const on = step.on ?? days.today;
  const faults: Fault[] = [];
  if (!/^\d{4}-\d{2}-\d{2}$/.test(on) || on < days.from || on > days.latest)
    faults.push(aftercareFaults.day(on.slice(0, 20), days.from, days.latest));
  const flagIds = care.triage.redFlags.map((one) => one.id);
  faults.push(...answerFaults(step.answers, { flagIds, from: days.from, latest: days.latest }));
  if (faults.length > 0) return bad(faults);
  const answers = step.answers as AftercareAnswers;
  const concerns = concernsOf(answers, toldOf(record, events), concernLimits(care));
  return good({ what: 'answer', task, on, via, answers, settles: settles(task.kind, answers), concerns });
}

export const toldOf = (record: AnimalRecord, events: Surrounding['events']) => {
  const told = answersIn(standing(events)).flatMap(({ body }) =>
    body.answers.massG === undefined ? [] : [{ on: body.on, massG: body.answers.massG }],
  );
  const all = [...massSeries(record.events), ...told].sort((a, b) => (a.on < b.on ? -1 : 1));
  return { species: record.species, stage: record.stage ?? 'adult', lastMassG: all.at(-1)?.massG ?? null } as const;
};

/** What first, by the shop's own triage. */
function triageOf(
  body: Extract<FollowedBody, { readonly what: 'answer' }>,
  record: AnimalRecord,
  care: CareFacts,
): TriageAnswer {
  const complaintId = body.concerns.find((one) => one.complaintId !== null)?.complaintId ?? '';
  return triage(
    care.triage,
    record.species,
    record.stage ?? 'adult',
    {
      complaintId,
      flags: body.answers.flags ?? [],
      readings: readingsTold(body.answers),
      answers: {},
      days: 0,
      lossPct: lossOf(body.answers, { lastMassG: massSeries(record.events).at(-1)?.massG ?? null }),
    },
    numberOf(care.condition, 'lossAlarmPct'),
  );
}

async function tokenKnown(desk: DeskContext, placementId: string, token: string): Promise<string | null> {
  const row = await desk.db
    .selectFrom('placement_event')
    .select('id')
    .where('placement_id', '=', placementId)
    .where('token', '=', token)
    .executeTakeFirst();
  return row?.id ?? null;
}
