// The keeper's pack of one placement as a PDF, in the language and units asked for, else as it was written last. The figures are computed by a worker
// and kept a while, so that a second language or a second copy is there at once. The paper itself is kept with
// the records (packs-given.ts).
import { addPackPrint } from '../records/pack-prints.ts';
import { keepPackGiven } from '../records/packs-given.ts';
import { good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { gatherPack } from './pack/gather-pack.ts';
import type { PackFigures } from './pack/pack-job.ts';
import { packPages, packPaper } from './pack/pack-pages.ts';
import { saidIn } from './pack/said-lines.ts';
import { type PaperUnits, paperUnits } from './paper-units.ts';
import type { PlanJob } from './plan-job.ts';
import type { Planner } from './planner.ts';

/** Packs whose figures are kept in memory; our choice. */
const mostKept = 16;
const kept = new Map<string, PackFigures>();

/** Faults: "PLACEMENT_UNKNOWN", "PROOF_NO_HOME", "ANIMAL_UNKNOWN", those of the enclosure and of planning,
 *  "WORK_STOPPED". The paper is kept as it is, unless an inspector looked at it. */
export async function printPack(
  desk: DeskContext,
  planner: Planner,
  placementId: string,
  asked: Partial<PaperUnits> = {},
  signal?: AbortSignal,
): Promise<Result<Buffer>> {
  const set = await setPack(desk, planner, placementId, asked, signal);
  if (!set.ok) return set;
  const { pdf, said, state, units, printedLast } = set.value;
  const bytes = pdf();
  await remember(desk, placementId, units, printedLast);
  if (desk.actor.role !== 'inspector') {
    const made = { ...units, at: desk.clock.now(), by: desk.actor.name };
    await keepPackGiven(desk.db, { placementId, state, said, bytes, ...made });
  }
  return good(bytes);
}

/** The pages as they are today, with what stands in them. Faults: those of printPack. */
export async function setPack(
  desk: DeskContext,
  planner: Planner,
  placementId: string,
  asked: Partial<PaperUnits>,
  signal?: AbortSignal,
) {
  const gathered = await gatherPack(desk, placementId);
  if (!gathered.ok) return gathered;
  const figures = await figuresOf(planner, gathered.value.job, signal);
  if (!figures.ok) return figures;
  const { subject, printedLast } = gathered.value;
  const units = paperUnits({ ...printedLast, ...asked }, subject.places[0]);
  const { pages, fit } = packPages(subject, figures.value, units);
  const said = saidIn(packPaper(subject, figures.value, units, fit));
  const pdf = (): Buffer => pages.pdf(new Date(`${subject.printedOn}T00:00:00Z`));
  return good({ pdf, said, state: subject.state, units, printedLast });
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
