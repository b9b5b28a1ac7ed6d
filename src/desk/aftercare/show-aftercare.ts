// Everything that follows one placement: its tasks with where each stands, what was told, calendars that were given out.

import type { Source } from '../../husbandry/fact.ts';
import { dueOfPlacement, releasedPlacement } from '../../records/aftercare.ts';
import { followedEvents } from '../../records/aftercare-inputs.ts';
import { allFacts } from '../../records/animal-facts.ts';
import { feedsOf } from '../../records/calendar-feeds.ts';
import { placementById } from '../../records/placements.ts';
import { placementNames } from '../../records/today.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import type { DeskContext } from '../desk-context.ts';
import { placementFaults } from '../placement-faults.ts';
import { latestDayOf, todayOf } from '../today.ts';
import { standing } from './followed-body.ts';
import { aftercareUpToDate } from './rebuild.ts';

/** Faults: "PLACEMENT_UNKNOWN". Not released yet: no tasks, `released` null. */
export async function showAftercare(desk: DeskContext, placementId: string) {
  const placement = await placementById(desk.db, placementId);
  if (placement === undefined || placement.branchId !== desk.actor.branchId)
    return bad([placementFaults.unknown(placementId)]);
  await aftercareUpToDate(desk);
  const today = todayOf(desk.clock);
  const [released, rows, events, names, feeds] = [
    await releasedPlacement(desk.db, placementId),
    await dueOfPlacement(desk.db, placementId),
    await followedEvents(desk.db, [placementId]),
    await placementNames(desk.db, [placementId]),
    await feedsOf(desk.db, desk.actor.branchId, placementId),
  ];
  const followed = standing(events.slice(events.findLastIndex((one) => one.kind === 'released') + 1));
  const looked = new Set(followed.flatMap(({ body }) => (body.what === 'looked-at' ? [body.of] : [])));
  return good({
    today,
    latest: latestDayOf(desk.clock),
    ...(names.get(placementId) ?? { placementId, title: '', callName: '', speciesId: '', enquiryId: '', animalId: '' }),
    released: released
      ? { on: released.releasedOn, diedOn: released.diedOn, returnedOn: released.returnedOn, heardOn: released.heardOn }
      : null,
    tasks: rows.map((row) => ({
      key: row.key,
      kind: row.kind,
      from: row.from,
      to: row.to,
      ...row.task,
      state: row.state === 'open' ? stateOn(row, today) : row.state,
      doneOn: row.doneOn,
      doneEvent: row.doneEvent,
    })),
    told: followed
      .filter(({ body }) => body.what !== 'looked-at')
      .map((one) => ({ ...one, at: one.at.toISOString(), lookedAt: looked.has(one.id) }))
      .reverse(),
    feeds: feeds.map((feed) => ({ ...feed, at: feed.at.toISOString() })),
    sources: sourcesOf(rows.flatMap((row) => (row.task as { readonly sources: readonly string[] }).sources)),
  });
}

/** What stands behind the keys of sources, for whoever reads them. */
function sourcesOf(
  keys: readonly string[],
): Readonly<Record<string, Pick<Source, 'title' | 'year' | 'kind' | 'read'>>> {
  const { sources } = allFacts().facts;
  return Object.fromEntries(
    [...new Set(keys)].flatMap((key) => {
      const row = sources[key];
      if (row === undefined) return [];
      const { title, year, kind, read } = row;
      return [[key, { title, kind, read, ...(year === undefined ? {} : { year }) }]];
    }),
  );
}

const stateOn = (row: { readonly from: string; readonly to: string }, today: string) =>
  today < row.from ? 'later' : today <= row.to ? 'due' : 'overdue';

export type AftercareSheet = Extract<Awaited<ReturnType<typeof showAftercare>>, { readonly ok: true }>['value'];
export type AftercareShown = Result<AftercareSheet>;
