// A manager lets an animal go although a requirement is not met or not known: named, reasoned, printed. Never where the
// program, the shop's policy or the law holds the requirement absolute.
import type { RequirementFinding } from '../proving/release/requirement.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, type Result } from '../shared/result.ts';
import { actOnPlacement } from './act-on-placement.ts';
import type { DeskContext } from './desk-context.ts';
import { placementFaults, shortestOverrideReason } from './placement-faults.ts';
import { overrideRoleFaults } from './placement-roles.ts';
import type { OverrideBody } from './placement-said.ts';
import type { PlacementThread } from './placement-thread.ts';

export interface NewOverride {
  readonly requirement: string;
  readonly reason: string;
  /** Takes an override back. */
  readonly takeBack: boolean;
  readonly token: string;
}

/** Faults: "PLACEMENT_ROLE"; all at once "OVERRIDE_ABSOLUTE", "OVERRIDE_NEEDLESS", "OVERRIDE_REASON"; "PLACEMENT_UNKNOWN",
 *  "PLACEMENT_STATE". */
export async function overrideRequirement(
  desk: DeskContext,
  placementId: string,
  { requirement, reason, takeBack, token }: NewOverride,
): Promise<Result<PlacementThread>> {
  const roles = overrideRoleFaults(desk);
  if (roles.length > 0) return bad(roles);
  const findingOf = (thread: PlacementThread): RequirementFinding | undefined =>
    thread.release.findings.find((one) => one.id === requirement);
  return await actOnPlacement(desk, {
    placementId,
    token,
    kind: 'override',
    from: 'open',
    faults: (thread) => overrideFaults(findingOf(thread), requirement, reason, takeBack),
    body: (thread): OverrideBody => {
      const finding = findingOf(thread)!;
      const covers = takeBack || finding.answer === 'met' ? 'nothing' : finding.answer;
      return { requirement: finding.id, covers, reason: reason.trim() };
    },
  });
}

function overrideFaults(
  finding: RequirementFinding | undefined,
  id: string,
  reason: string,
  takeBack: boolean,
): readonly Fault[] {
  if (finding === undefined || (takeBack && finding.override === null)) return [placementFaults.overrideNeedless(id)];
  if (takeBack) return [];
  const letters = reason.trim().length;
  return [
    ...(finding.answer === 'met' ? [placementFaults.overrideNeedless(id)] : []),
    ...(finding.absolute === null ? [] : [placementFaults.overrideAbsolute(finding)]),
    ...(letters < shortestOverrideReason ? [placementFaults.overrideReason(letters)] : []),
  ];
}
