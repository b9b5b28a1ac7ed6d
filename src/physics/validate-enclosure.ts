// Is this unknown value an enclosure the program can simulate, and if not, what is wrong with it?
// Every fault at once; never throws for anything that JSON can hold. Leaves out: reading files, and judging
// the home (a box that is too cold is a verdict, not a fault).
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import { type Enclosure, enclosureFormat, enclosureVersion } from './enclosure.ts';
import { crossFaults } from './enclosure-cross.ts';
import type { Draft } from './enclosure-draft.ts';
import { enclosureFields } from './enclosure-fields.ts';
import { readField, shown } from './field-reader.ts';
import { fieldTree } from './field-tree.ts';
import type { MaterialTable } from './material.ts';

export const enclosureTree = fieldTree(enclosureFields);

/** An enclosure from anything.
 *  @param raw       what JSON.parse gave
 *  @param materials the known materials, for the names in panels and substrate
 *  @returns a clean copy with known keys only, or every fault: field, value, allowed range with unit, what to do */
export function enclosureFrom(raw: unknown, materials: MaterialTable): Result<Enclosure> {
  const otherVersion = versionFault(raw);
  if (otherVersion !== null) return bad([otherVersion]);
  const faults: Fault[] = [];
  const draft = readField(enclosureTree, raw, '', faults) as Draft<Enclosure> | undefined;
  if (draft === undefined) return bad(faults);
  faults.push(...crossFaults(draft, materials));
  return faults.length > 0 ? bad(faults) : good(draft as Enclosure);
}

/** A file of another version may mean other things by the same keys, so nothing else in it is judged. */
function versionFault(raw: unknown): Fault | null {
  if (typeof raw !== 'object' || raw === null || !Object.hasOwn(raw, 'version')) return null;
  const { format, version } = raw as { readonly format?: unknown; readonly version?: unknown };
  if (format !== enclosureFormat || typeof version !== 'number' || version === enclosureVersion) return null;
  const newer = version > enclosureVersion;
  return {
    code: 'ENC_VERSION',
    field: 'version',
    got: shown(version),
    allowed: `${enclosureVersion}`,
    say: `This file has layout version ${shown(version)}; this program reads version ${enclosureVersion}.`,
    fix: newer
      ? 'Update the program, or save the file again from the older one.'
      : 'Write the file anew from an example.',
  };
}
