// The animal goes to its home. Only when every requirement stands; what stood there is written down with it, and the
// animal's own register gets its entry in the same moment.
import type { Result } from '../shared/result.ts';
import { actOnPlacement } from './act-on-placement.ts';
import type { DeskContext } from './desk-context.ts';
import { shutFaults } from './placement-faults.ts';
import type { PlacementThread } from './placement-thread.ts';
import { writeEntriesIn } from './write-entry.ts';

export interface Release {
  readonly outcome: 'sold' | 'rehomed';
  readonly token: string;
}

/** Faults: "RELEASE_SHUT" once for every requirement that does not stand; "PLACEMENT_UNKNOWN", "PLACEMENT_STATE",
 *  "PLACEMENT_ROLE". */
export async function releaseAnimal(
  desk: DeskContext,
  placementId: string,
  { outcome, token }: Release,
): Promise<Result<PlacementThread>> {
  return await actOnPlacement(desk, {
    placementId,
    token,
    kind: 'released',
    from: 'open',
    faults: ({ release }) => (release.open ? [] : shutFaults(release.findings)),
    body: (thread) => ({ outcome, ...whatStood(thread) }),
    also: async (tx, { animal, around }) => {
      const body = { outcome, reference: placementId };
      await writeEntriesIn(tx, desk, animal, around, [{ kind: 'sale', body, clientKey: `${token}:sale` }]);
    },
  });
}

/** Kept with the release, so that years later it reads as it was, whatever has changed since. */
const whatStood = ({ enquiry, plan, proof, law, release }: PlacementThread) => ({
  enquiryVersion: enquiry.version,
  planResultId: plan?.id ?? null,
  proofResultId: proof?.id ?? null,
  places: law.map(({ place, role }) => ({ place, role })),
  requirements: release.findings.map(({ id, answer, absolute, reasons, evidence, override }) => ({
    id,
    answer,
    absolute,
    reasons,
    evidence,
    override,
  })),
});
