// A proof that may wait its turn: asked for now, computed by whichever process is free, its answer kept like any other.
// The counter's own proof stays as it is (prove-enquiry.ts).
import type { Queue, QueueState } from '../records/queue.ts';
import type { Db } from '../records/schema.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Actor, Clock, DeskContext } from './desk-context.ts';
import { enquiryFor } from './home-of-enquiry.ts';
import { type ProofAsked, proveEnquiry } from './prove-enquiry.ts';
import type { Prover } from './prover.ts';
import { readingFaults } from './reading-faults.ts';

const kind = 'proof';
/** Far longer than a proof takes; then its process counts as gone and another takes it (our choice). */
const patienceS = 120;

interface ProofWork {
  readonly actor: Actor;
  readonly enquiryId: string;
  readonly asked: ProofAsked;
}

/** Lets this process take proofs. */
export async function takeProofs(queue: Queue, db: Db, clock: Clock, prover: Prover): Promise<void> {
  await queue.take<ProofWork>(kind, async ({ actor, enquiryId, asked }) => {
    const proven = await proveEnquiry({ actor, clock, db }, prover, enquiryId, asked);
    return proven.ok ? { resultId: proven.value.resultId } : { faults: proven.faults };
  });
}

/** @returns the id to ask after. Faults: "ENQUIRY_UNKNOWN". */
export async function proveLater(
  desk: DeskContext,
  queue: Queue,
  enquiryId: string,
  asked: ProofAsked,
): Promise<Result<{ readonly jobId: string }>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const work: ProofWork = { actor: desk.actor, enquiryId, asked };
  const jobId = await queue.add(kind, work, { patienceS });
  return jobId === null ? bad([readingFaults.busy(1)]) : good({ jobId });
}

/** Where it stands; another branch's work is unknown. */
export async function proofLater(
  desk: DeskContext,
  queue: Queue,
  jobId: string,
): Promise<Pick<QueueState, 'state' | 'output'> | null> {
  const found = await queue.state(kind, jobId);
  const mine = (found?.data as unknown as ProofWork | undefined)?.actor.branchId === desk.actor.branchId;
  return found === null || !mine ? null : { state: found.state, output: found.output };
}
