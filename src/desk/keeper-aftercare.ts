// What a keeper's link shows of aftercare, and the answers that come back through it. The link shows the tasks of the
// home it was given for and what the animal is, so that the phone can judge readings without a connection; no names.
import type { CareFacts } from '../animal/care-facts.ts';
import type { Species } from '../husbandry/fact.ts';
import { type ConcernLimits, concernLimits } from '../proving/aftercare/answer.ts';
import { dueOfPlacement, releasedPlacement } from '../records/aftercare.ts';
import { enquiryBranch, followedEvents, releasedOfEnquiry } from '../records/aftercare-inputs.ts';
import { allFacts } from '../records/animal-facts.ts';
import { placementById } from '../records/placements.ts';
import type { Db } from '../records/schema.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { aftercareFaults } from './aftercare/aftercare-faults.ts';
import { deskOfFeed, placementCalendar } from './aftercare/calendar-feed.ts';
import { aftercareUpToDate } from './aftercare/rebuild.ts';
import { type TakenStep, takeStep, toldOf } from './aftercare/take-step.ts';
import { recordOf, surroundings } from './animal-record.ts';
import type { Clock, DeskContext } from './desk-context.ts';
import { workingLink } from './keeper-page.ts';
import type { PaperUnits } from './paper-units.ts';
import { readingFaults } from './reading-faults.ts';
import { latestDayOf, todayOf } from './today.ts';

/** Tasks that lie further ahead are not told yet; our choice. */
const aheadTasks = 3;

export interface KeeperAftercare {
  readonly today: string;
  readonly latest: string;
  readonly releasedOn: string | null;
  readonly tasks: readonly object[];
  readonly species: Species | null;
  readonly stage: string;
  readonly lastMassG: number | null;
  readonly limits: ConcernLimits;
  readonly triage: CareFacts['triage'] | null;
}

/** Faults: "KEEPER_LINK". */
export async function openKeeperAftercare(db: Db, clock: Clock, secret: string): Promise<Result<KeeperAftercare>> {
  const behind = await behindLink(db, clock, secret);
  if (behind === null) return bad([readingFaults.linkUnknown]);
  const { desk, placementId } = behind;
  const today = todayOf(clock);
  const { care } = allFacts();
  const base = { today, latest: latestDayOf(clock), limits: concernLimits(care) };
  if (placementId !== null) await aftercareUpToDate(desk);
  const released = placementId === null ? undefined : await releasedPlacement(db, placementId);
  const placement = placementId === null ? undefined : await placementById(db, placementId);
  if (placementId === null || released === undefined || placement === undefined)
    return good({ ...base, releasedOn: null, tasks: [], species: null, stage: 'adult', lastMassG: null, triage: null });
  const record = await recordOf(desk, await surroundings(desk), placement.animalId);
  if (!record.ok) return record;
  const open = (await dueOfPlacement(db, placementId)).filter((row) => row.state === 'open');
  const due = open.filter((row) => row.from <= today);
  const ahead = open
    .filter((row) => row.from > today)
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .slice(0, aheadTasks);
  return good({
    ...base,
    releasedOn: released.releasedOn,
    tasks: [...due, ...ahead].map(({ key, kind, from, to, task }) => {
      const state = from > today ? 'later' : to < today ? 'overdue' : 'due';
      return { key, kind, from, to, ...task, state };
    }),
    species: record.value.species,
    stage: record.value.stage ?? 'adult',
    lastMassG: toldOf(record.value, await followedEvents(db, [placementId])).lastMassG,
    triage: care.triage,
  });
}

export interface KeeperAnswer {
  readonly token: string;
  readonly key: string;
  readonly on: string;
  readonly answers: Readonly<Record<string, unknown>>;
}

/** Faults: "KEEPER_LINK", "AFTERCARE_NOT_RELEASED", "AFTERCARE_TASK", "AFTERCARE_ANSWER", "AFTERCARE_DAY". */
export async function answerFromKeeper(
  db: Db,
  clock: Clock,
  secret: string,
  { token, key, on, answers }: KeeperAnswer,
): Promise<Result<TakenStep>> {
  const behind = await behindLink(db, clock, secret);
  if (behind === null) return bad([readingFaults.linkUnknown]);
  if (behind.placementId === null) return bad([aftercareFaults.notReleased]);
  return await takeStep(
    behind.desk,
    behind.placementId,
    { what: 'answer', key, on, answers },
    { token, via: 'keeper' },
  );
}

/** Faults: "KEEPER_LINK", "AFTERCARE_NOT_RELEASED". */
export async function keeperCalendar(
  db: Db,
  clock: Clock,
  secret: string,
  asked: Partial<PaperUnits>,
): Promise<Result<string>> {
  const behind = await behindLink(db, clock, secret);
  if (behind === null) return bad([readingFaults.linkUnknown]);
  if (behind.placementId === null) return bad([aftercareFaults.notReleased]);
  return await placementCalendar(behind.desk, behind.placementId, asked, 'keeper');
}

async function behindLink(
  db: Db,
  clock: Clock,
  secret: string,
): Promise<{ readonly desk: DeskContext; readonly placementId: string | null } | null> {
  const link = await workingLink(db, clock, secret);
  const branchId = link && (await enquiryBranch(db, link.enquiryId));
  if (!link || !branchId) return null;
  const desk = { ...deskOfFeed(db, clock, branchId), actor: { name: 'keeper', branchId, role: 'assistant' as const } };
  return { desk, placementId: (await releasedOfEnquiry(db, link.enquiryId)) ?? null };
}
