// Reads data/release.json and hands it to the pure check. Leaves out what is right (proving/release/release-facts.ts).
import { requirementsFrom } from '../proving/release/release-facts.ts';
import type { RequirementRow } from '../proving/release/requirement.ts';
import type { Fault } from '../shared/fault.ts';
import { dataFile } from './data-files.ts';

export function loadRequirements(): { readonly rows: readonly RequirementRow[]; readonly faults: readonly Fault[] } {
  return requirementsFrom(dataFile('release.json'), new Set(Object.keys(dataFile('sources.json'))));
}

let known: readonly RequirementRow[] | undefined;

/** Every requirement of a release, read once in a process. */
export function allRequirements(): readonly RequirementRow[] {
  known ??= loadRequirements().rows;
  return known;
}
