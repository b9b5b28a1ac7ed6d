// What of all that was said of a placement still stands: the newest of each requirement, nothing from before a return.
import type { Place } from '../husbandry/law-rule.ts';
import { isRequirementId, type Override, type RequirementId, type Statement } from '../proving/release/requirement.ts';
import type { PlacementEvent } from '../records/placements.ts';

export interface StandingSaid {
  readonly statements: Readonly<Partial<Record<RequirementId, Statement>>>;
  readonly overrides: Readonly<Partial<Record<RequirementId, Override>>>;
}

/** An animal that came back goes to nobody on what was said before it left. */
export function standingSaid(events: readonly PlacementEvent[]): StandingSaid {
  const from = events.findLastIndex((event) => event.kind === 'taken-back') + 1;
  const statements: Partial<Record<RequirementId, Statement>> = {};
  const overrides: Partial<Record<RequirementId, Override>> = {};
  for (const event of events.slice(from)) {
    const id = String(event.body.requirement);
    if (!isRequirementId(id)) continue;
    const when = { at: event.at.toISOString(), by: event.by };
    if (event.kind === 'statement')
      statements[id] = { ...(event.body as unknown as StatementBody), requirement: id, ...when };
    if (event.kind === 'override') {
      const { covers, reason } = event.body as unknown as OverrideBody;
      if (covers === 'nothing') delete overrides[id];
      else overrides[id] = { requirement: id, covers, reason, ...when };
    }
  }
  return { statements, overrides };
}

/** As it is kept in placement_event.body. */
export interface StatementBody {
  readonly requirement: RequirementId;
  readonly answer: Statement['answer'];
  readonly text: string;
  readonly place: Place | null;
  readonly years: number | null;
}

export interface OverrideBody {
  readonly requirement: RequirementId;
  /** "nothing" takes an override back. */
  readonly covers: Override['covers'] | 'nothing';
  readonly reason: string;
}
