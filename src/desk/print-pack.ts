// The keeper's pack of one placement as a PDF, in the language and units asked for, else as it was written last. The figures are computed by a worker
// and kept a while, so that a second language or a second copy is there at once.
import { addPackPrint } from '../records/pack-prints.ts';
import { good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { gatherPack } from './pack/gather-pack.ts';
import type { PackFigures } from './pack/pack-job.ts';
import { packPdf } from './pack/pack-pages.ts';
import { type PaperUnits, paperUnits } from './paper-units.ts';
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
  asked: Partial<PaperUnits> = {},
  signal?: AbortSignal,
): Promise<Result<Buffer>> {
  const gathered = await gatherPack(desk, placementId);
  if (!gathered.ok) return gathered;
  const figures = await figuresOf(planner, gathered.value.job, signal);
  if (!figures.ok) return figures;
  const { subject, printedLast } = gathered.value;
  const units = paperUnits({ ...printedLast, ...asked }, subject.places[0]);
  const pdf = packPdf(subject, figures.value, units);
  await remember(desk, placementId, units, printedLast);
  return good(pdf);
}

/** Whoever makes a copy later gets the same paper. An inspector only looks and leaves it as it is. */
async function remember(desk: DeskContext, placementId: string, units: PaperUnits, last: PaperUnits | null) {
  if (desk.actor.role === 'inspector' || (last !== null && JSON.stringify(last) === JSON.stringify(units))) return;
  await addPackPrint(desk.db, placementId, { ...units, at: desk.clock.now(), by: desk.actor.name });
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
