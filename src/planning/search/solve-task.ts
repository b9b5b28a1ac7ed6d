// The piece of work that a thread does for a search: lines of some versions of one arrangement. It needs no shelf, no rules
// and no kits, so that a thread that only solves can begin at once.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import { type BoxGeometry, boxGeometry } from '../../physics/simulate.ts';
import { drawMembers, type Priors } from '../ensemble.ts';
import { type Moments, momentsOf } from '../member.ts';
import type { SearchTask } from './kit-search.ts';
import { type SettledStates, solveSurface } from './solve-surface.ts';
import type { MemberSurface } from './surface.ts';

/** All that solving depends on, beside the box itself. */
export interface SolveSetting {
  readonly climate: ClimateNeeds;
  readonly materials: MaterialTable;
  readonly priors: Priors;
  readonly members: number;
  readonly seed: number;
}

/** @returns solves a task; the enclosure of an arrangement may be left out once it has been handed */
export type TaskSolver = (task: SearchTask, enclosure: Enclosure | null) => MemberSurface[];

interface Known {
  readonly geometry: BoxGeometry;
  readonly moments: Moments;
  /** The best-estimate version, from which all others start: whichever thread solves them, the lines are the same. */
  readonly best: { readonly surface: MemberSurface; readonly settled: SettledStates };
}

export function taskSolver({ climate, materials, priors, members, seed }: SolveSetting): TaskSolver {
  const versions = drawMembers(priors, Math.max(1, members), seed);
  const boxes = new Map<number, Known>();
  const boxOf = (arrangement: number, enclosure: Enclosure | null): Known => {
    const known = boxes.get(arrangement);
    if (known) return known;
    if (!enclosure) throw new Error(`arrangement ${arrangement} was never handed`);
    const geometry = boxGeometry(enclosure, materials);
    const moments = momentsOf(enclosure);
    const made = { geometry, moments, best: solveSurface(geometry, versions[0]!, moments, climate) };
    boxes.set(arrangement, made);
    return made;
  };
  return (task, enclosure) => {
    const { geometry, moments, best } = boxOf(task.arrangement, enclosure);
    return versions
      .slice(task.from, task.to)
      .map((parameters, i) =>
        task.from + i === 0 ? best.surface : solveSurface(geometry, parameters, moments, climate, best.settled).surface,
      );
  };
}

/** What another thread is sent of a search. */
export const settingOf = (
  input: Omit<SolveSetting, 'materials'> & { readonly facts: { readonly materials: MaterialTable } },
): SolveSetting => ({
  climate: input.climate,
  materials: input.facts.materials,
  priors: input.priors,
  members: input.members,
  seed: input.seed,
});
