// Prove the home of an enquiry by everything that was read in it, and keep the answer with its inputs and versions.
import type { ShopValue } from '../husbandry/shop-value.ts';
import { type AskedFor, shopFactsFor } from '../husbandry/used-shop-values.ts';
import type { ProofAnswer } from '../proving/verdict/proof-answer.ts';
import type { ProofRule } from '../proving/verdict/rule.ts';
import { allFacts } from '../records/animal-facts.ts';
import { instrumentsOf } from '../records/instruments.ts';
import {
  insertProofResult,
  newestProof,
  type ProofResultRow,
  readingsChangedAt,
  readingsState,
} from '../records/readings.ts';
import { versions } from '../records/versions.ts';
import { good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryFor, homeOf } from './home-of-enquiry.ts';
import { type BranchRule, branchRule } from './proof-policy.ts';
import type { Prover } from './prover.ts';
import { readingsOfHome } from './readings-of-home.ts';
import { shopValues } from './shop-values.ts';
import { keepOutcome, type Stoppable, untilStopped } from './stop-work.ts';
import { writerOf } from './take-reading-file.ts';

export interface KeptProof {
  readonly answer: ProofAnswer;
  readonly inputs: object;
  readonly resultId: string;
}

export interface ProofAsked extends Stoppable {
  readonly rule?: Partial<ProofRule>;
  /** The home with room and animal filled in; else the one that stands in the enquiry. */
  readonly enclosure?: object;
}

/** Faults: "ENQUIRY_UNKNOWN", "PROOF_NO_HOME", those of readings and enclosure, "PROOF_BUSY",
 *  "WORK_STOPPED". */
export async function proveEnquiry(
  desk: DeskContext,
  prover: Prover,
  enquiryId: string,
  asked: ProofAsked = {},
): Promise<Result<KeptProof>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const home = homeOf(enquiry.value);
  if (!home.ok) return home;
  // Taken first: what comes in while the proof is computed makes it an old one.
  const state = await readingsState(desk.db, enquiryId);
  const read = await readingsOfHome(desk, enquiryId);
  if (!read.ok) return read;
  const { log, questions } = read.value;
  const enclosure = asked.enclosure ?? home.value;
  const values = await shopValues(desk);
  const { rule, settings } = branchRule(values);
  const given = asked.rule ?? {};
  const { animal = null } = enclosure as { readonly animal?: AskedFor['animal'] };
  const { used } = shopFactsFor(allFacts().facts, values, { use: 'proof', animal, enclosure });
  const job = {
    enclosure,
    log,
    questions,
    instruments: await instrumentsOf(desk.db, desk.actor.branchId),
    rule: { ...rule, ...given },
    ruleSettings: settings.filter((s) => given[s.key] === undefined),
    shopValues: used.shopValues,
  };
  const proof = await untilStopped(desk, asked, async (signal) => await prover.prove(job, signal));
  if (!proof.ok) return proof;
  const { model, data } = versions();
  const inputs = { ...read.value.inputs, enclosure, readingsState: state, ...used };
  const versionsOfIt = { enquiryVersion: enquiry.value.version, modelVersion: model, dataVersion: data };
  const row = { enquiryId, answer: proof.value, inputs, ...versionsOfIt };
  const resultId = await keepOutcome(desk, asked, async (tx) => await insertProofResult(tx, row, writerOf(desk)));
  return resultId.ok ? good({ answer: proof.value, inputs, resultId: resultId.value }) : resultId;
}

export interface ShownProof {
  readonly proof: ProofResultRow | null;
  /** Whether home, readings and the branch's own values are still those it was made of. */
  readonly current: boolean;
  /** What this branch asks of a proof now. */
  readonly branchRule: BranchRule;
}

export async function isCurrent(
  desk: Pick<DeskContext, 'db' | 'actor'>,
  enquiry: { readonly id: string; readonly version: number },
  proof: ProofResultRow | undefined,
): Promise<boolean> {
  if (proof === undefined || proof.enquiryVersion !== enquiry.version) return false;
  return (await sameReadings(desk, enquiry.id, proof)) && (await sameShopValues(desk, proof));
}

/** Whether what was read is still what the proof saw; proofs kept before its state was are told by the time. */
async function sameReadings(
  { db }: Pick<DeskContext, 'db'>,
  enquiryId: string,
  proof: ProofResultRow,
): Promise<boolean> {
  const { readingsState: before } = proof.inputs;
  if (before !== undefined) return before === (await readingsState(db, enquiryId));
  const changed = await readingsChangedAt(db, enquiryId);
  return changed === null || changed <= proof.at;
}

/** Whether the branch still goes by the values that the proof was made with. */
async function sameShopValues(desk: Pick<DeskContext, 'db' | 'actor'>, { inputs }: ProofResultRow): Promise<boolean> {
  const { enclosure, shopValues: before = [] } = inputs;
  const { animal = null } = (enclosure ?? {}) as { readonly animal?: AskedFor['animal'] };
  const asked = { use: 'proof', animal, enclosure } as const;
  const now = shopFactsFor(allFacts().facts, await shopValues(desk), asked).used.shopValues;
  const marks = (values: unknown): string =>
    (values as readonly ShopValue[])
      .map(({ path, at }) => `${path} ${at}`)
      .sort()
      .join('\n');
  return marks(before) === marks(now);
}

/** The newest proof. Faults: "ENQUIRY_UNKNOWN". */
export async function showProof(desk: DeskContext, enquiryId: string): Promise<Result<ShownProof>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const proof = await newestProof(desk.db, enquiryId);
  return good({
    proof: proof ?? null,
    current: await isCurrent(desk, enquiry.value, proof),
    branchRule: branchRule(await shopValues(desk)),
  });
}
