// The keeper's pack of one placement as a PDF, in the language and units asked for. The figures are computed by a worker
// and kept a while, so that a second language or a second copy is there at once.
import { good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { gatherPack } from './pack/gather-pack.ts';
import type { PackFigures } from './pack/pack-job.ts';
import { packPdf } from './pack/pack-pages.ts';
import { type PackUnits, packUnits } from './pack/tongue.ts';
import type { PlanJob } from './plan-job.ts';
import type { Planner } from './planner.ts';

/** Packs whose figures are kept in memory; our choice. */
const mostKept = 16;
const kept = new Map<string, PackFigures>();

/** Faults: "PLACEMENT_UNKNOWN", "PROOF_NO_HOME", "ANIMAL_UNKNOWN", those of the enclosure and of planning,
 *  "WORK_STOPPED". Nothing of it is kept in the records. */
export async function printPack(
  desk: DeskContext,
  planner: Planner,
  placementId: string,
  asked: Partial<PackUnits> = {},
  signal?: AbortSignal,
): Promise<Result<Buffer>> {
  const gathered = await gatherPack(desk, placementId);
  if (!gathered.ok) return gathered;
  const figures = await figuresOf(planner, gathered.value.job, signal);
  if (!figures.ok) return figures;
  const { subject } = gathered.value;
  return good(packPdf(subject, figures.value, packUnits(asked, subject.places[0])));
}

/** The same job gives the same figures: model and data do not change while the program runs. */
async function figuresOf(planner: Planner, job: PlanJob, signal?: AbortSignal): Promise<Result<PackFigures>> {
  const key = JSON.stringify(job);
  const known = kept.get(key);
  if (known) return good(known);
  const made = await planner.pack({ kind: 'pack', plan: job }, signal);
  if (!made.ok) return made;
  kept.set(key, made.value);
  const oldest = kept.keys().next().value;
  if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
  return made;
}
