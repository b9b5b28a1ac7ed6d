// Works out what is due after releases, for every placement that was marked, some at a time; the rest goes on behind.
import type { AftercareTask } from '../../proving/aftercare/task.ts';
import { aftercareTasks } from '../../proving/aftercare/tasks.ts';
import {
  countStale,
  type DueTask,
  markOtherVersions,
  putAftercare,
  type ReleasedPlacement,
  type ToldConcern,
  takeStale,
} from '../../records/aftercare.ts';
import {
  type FollowedEvent,
  followedEvents,
  homeFactsOf,
  instrumentsOfHomes,
  type PlacementToFollow,
  placementsToFollow,
} from '../../records/aftercare-inputs.ts';
import { placementState } from '../../records/placements.ts';
import type { Db } from '../../records/schema.ts';
import { versions } from '../../records/versions.ts';
import { type AnimalRecord, isSouthern, recordsOf, surroundings } from '../animal-record.ts';
import type { DeskContext } from '../desk-context.ts';
import { dayOf } from '../today.ts';
import { assembled } from './assemble.ts';
import { answersIn, type Followed, standing } from './followed-body.ts';

/** At most so many are worked out before somebody gets an answer; our choice, a few hundredths of a second. */
const atOnce = 20;
const behindBatch = 100;
/** Those that wait are counted up to here. */
const mostCounted = 1000;

/** Rules and facts that the rows were made with. */
const madeWith = (): string => `${versions().model} ${versions().data}`;

export interface UpToDate {
  /** Still to be worked out, counted up to a thousand. */
  readonly waiting: number;
}

/** Brings the branch up to date as far as that is quick, and goes on behind when there is more. */
export async function aftercareUpToDate(desk: DeskContext): Promise<UpToDate> {
  await markOncePerProcess(desk.db);
  await rebuildSome(desk, atOnce);
  const waiting = await countStale(desk.db, desk.actor.branchId, mostCounted);
  if (waiting > failed.size) void drain(desk);
  return { waiting };
}

const marked = new WeakSet<Db>();

async function markOncePerProcess(db: Db): Promise<void> {
  if (marked.has(db)) return;
  marked.add(db);
  await markOtherVersions(db, madeWith());
}

const draining = new Set<string>();

async function drain(desk: DeskContext): Promise<void> {
  const { branchId } = desk.actor;
  if (draining.has(branchId)) return;
  draining.add(branchId);
  try {
    while ((await rebuildSome(desk, behindBatch)) > 0) await new Promise((next) => setImmediate(next));
  } finally {
    draining.delete(branchId);
  }
}

/** Placements that could not be worked out in this process; they stay marked and are told as waiting. */
const failed = new Set<string>();

/** @returns how many were worked out */
export async function rebuildSome(desk: DeskContext, most: number): Promise<number> {
  const done = await rebuildTogether(desk, most).catch(() => null);
  if (done !== null || most === 1) return done ?? 0;
  // One of them cannot be worked out: the others may not wait for it.
  let alone = 0;
  for (let i = 0; i < most; i++) alone += await rebuildTogether(desk, 1).catch(() => 0);
  return alone;
}

async function rebuildTogether(desk: DeskContext, most: number): Promise<number> {
  let ids: readonly string[] = [];
  try {
    return await desk.db.transaction().execute(async (tx) => {
      ids = await takeStale(tx, desk.actor.branchId, most, [...failed]);
      if (ids.length > 0) await rebuild({ ...desk, db: tx }, ids);
      return ids.length;
    });
  } catch (error) {
    if (ids.length === 1) failed.add(ids[0]!);
    throw error;
  }
}

async function rebuild(desk: DeskContext, ids: readonly string[]): Promise<void> {
  const around = await surroundings(desk);
  const placements = await placementsToFollow(desk.db, ids);
  const events = grouped(await followedEvents(desk.db, ids), (one) => one.placementId);
  const enquiryIds = [...new Set(placements.map((one) => one.enquiryId))];
  const animalIds = [...new Set(placements.map((one) => one.animalId))];
  const homes = new Map((await homeFactsOf(desk.db, enquiryIds)).map((one) => [one.enquiryId, one]));
  const instruments = grouped(await instrumentsOfHomes(desk.db, enquiryIds), (one) => one.enquiryId);
  const records = new Map((await recordsOf(desk, around, { ids: animalIds })).map((one) => [one.row.id, one]));
  const made = placements.flatMap((placement) => {
    const record = records.get(placement.animalId);
    const home = homes.get(placement.enquiryId);
    const own = events.get(placement.id) ?? [];
    if (!record || !home || !own.some((one) => one.kind === 'released')) return [];
    const stay = stayOf(placement, own, record);
    const facts = {
      releasedOn: stay.released.releasedOn,
      followed: stay.followed,
      home,
      instruments: instruments.get(placement.enquiryId) ?? [],
      record,
    };
    const tasks = stay.open
      ? aftercareTasks(assembled(facts, { ...around, southern: southernHome(own) ?? around.southern }), around.care)
      : [];
    return [{ released: stay.released, ...follows(placement, stay.followed, own, tasks) }];
  });
  await putAftercare(desk.db, ids, {
    released: made.map((one) => one.released),
    tasks: made.flatMap((one) => one.tasks),
    concerns: made.flatMap((one) => one.concerns),
    dataVersion: madeWith(),
    at: desk.clock.now(),
  });
}

/** Whether winter comes in July where the home is said to be; null when nobody said where. */
function southernHome(events: readonly FollowedEvent[]): boolean | null {
  const said = events.findLast((one) => one.kind === 'statement' && one.body.requirement === 'home-place');
  return typeof said?.body.place === 'string' ? isSouthern(said.body.place) : null;
}

interface Stay {
  readonly released: ReleasedPlacement;
  readonly followed: readonly Followed[];
  /** Whether the animal is still there, as far as is known. */
  readonly open: boolean;
}

/** The time from the last release until now, until the animal came back, or until it died. */
function stayOf(placement: PlacementToFollow, events: readonly FollowedEvent[], record: AnimalRecord): Stay {
  const last = events.findLastIndex((one) => one.kind === 'released');
  const releasedOn = dayOf(events[last]!.at);
  const after = events.slice(last + 1);
  const followed = standing(after);
  const said = answersIn(followed);
  const back = after.find((one) => one.kind === 'taken-back');
  const entered = (kind: string, fits: (body: Record<string, unknown>) => boolean) =>
    record.events.find((one) => one.kind === kind && one.on >= releasedOn && fits(one.body as never))?.on ?? null;
  const returnedOn = back ? dayOf(back.at) : entered('sale', (body) => body.outcome === 'returned');
  const told = said.find((one) => one.body.answers.well === 'died')?.body.on ?? null;
  const died = told ?? entered('death', () => true);
  const diedOn = died !== null && returnedOn !== null && died > returnedOn ? null : died;
  const heard = [...said.map((one) => one.body.on), returnedOn, diedOn].filter((day) => day !== null).sort();
  return {
    released: {
      placementId: placement.id,
      branchId: placement.branchId,
      speciesId: record.species.id,
      releasedOn,
      heardOn: heard.at(-1) ?? null,
      diedOn,
      returnedOn,
    },
    followed,
    open: placementState(events as never) === 'released' && returnedOn === null && diedOn === null,
  };
}

function follows(
  placement: PlacementToFollow,
  followed: readonly Followed[],
  events: readonly FollowedEvent[],
  made: readonly AftercareTask[],
): { readonly tasks: readonly DueTask[]; readonly concerns: readonly ToldConcern[] } {
  const row = (task: AftercareTask, end: Pick<DueTask, 'state' | 'doneOn' | 'doneEvent'>): DueTask => {
    const { key, kind, from, to, ...rest } = task;
    const { id: placementId, branchId } = placement;
    // Grows with everything that happens, so that a task that comes back is newer than when it went.
    return { placementId, branchId, key, kind, from, to, task: rest, ...end, sequence: events.length - 1 };
  };
  const ended = new Map<string, DueTask>();
  for (const { id, body } of followed) {
    if (body.what === 'set-aside')
      ended.set(body.task.key, row(body.task, { state: 'set-aside', doneOn: body.on, doneEvent: id }));
    if (body.what === 'answer' && body.settles)
      ended.set(body.task.key, row(body.task, { state: 'done', doneOn: body.on, doneEvent: id }));
  }
  const open = made
    .filter((task) => !ended.has(task.key))
    .map((task) => row(task, { state: 'open', doneOn: null, doneEvent: null }));
  const seen = new Set(followed.flatMap(({ body }) => (body.what === 'looked-at' ? [body.of] : [])));
  const concerns = answersIn(followed).flatMap((one): ToldConcern[] => {
    const [first] = one.body.concerns;
    if (!first || seen.has(one.id)) return [];
    const { urgency } = first;
    const told = { on: one.body.on, via: one.body.via, concerns: one.body.concerns };
    return [
      {
        eventId: one.id,
        placementId: placement.id,
        branchId: placement.branchId,
        urgency,
        toldAt: one.at,
        concerns: told,
      },
    ];
  });
  return { tasks: [...ended.values(), ...open], concerns };
}

function grouped<T>(rows: readonly T[], keyOf: (row: T) => string): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const own = groups.get(key);
    if (own) own.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}
