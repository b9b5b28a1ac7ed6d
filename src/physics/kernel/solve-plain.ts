// One linear solve of the heat network in plain arithmetic, for where WebAssembly is missing: panels and air eliminated,
// surfaces solved, everything filled in again. kernel.as does the same, faster.
import { solveInPlace } from '../dense.ts';
import { solveBandInPlace } from '../dense-band.ts';
import type { Factored } from './factored.ts';

/** Heat put in [W]: to air nodes, to inner surfaces, and within panels at their mat node. */
export interface Sources {
  readonly airW: Float64Array;
  readonly surfaceW: Float64Array;
  readonly matW: Float64Array;
}

/** Solve for a whole row of temperatures.
 *  @param old the row before the step [degC], null for a box at rest   @param outsideC temperature beyond each patch, null to
 *  leave the room out   @param row gets the answer [degC]   @param scratch room for air and surfaces */
export function solvePlain(
  factored: Factored,
  sources: Sources,
  old: Float64Array | null,
  outsideC: Float64Array | null,
  roomC: number,
  row: Float64Array,
  scratch: Float64Array,
): void {
  const { layout, lu, air, toAir, fromAir } = factored;
  const { airNodes, patches, groups, groupOf, order, airAt, airBand } = layout;
  rightSide(factored, sources, old, outsideC, roomC, row, scratch);
  // what a group's mean would be if nothing came from the air or from other groups; 0 where surfaces stand alone
  const still = layout.isGrouped ? groupRightSides(factored, row, scratch) : null;
  solveBandInPlace(air, airNodes, airBand, scratch);
  for (let s = 0; s < patches; s++) {
    const at = airNodes + groupOf[s]!;
    scratch[at] = scratch[at]! + fromAir[s]! * scratch[airAt[s]!]!;
  }
  solveInPlace(lu, groups, scratch, airNodes);
  for (let a = 0; a < airNodes; a++) scratch[order[a]!] = row[a]!;
  if (still) fromMeans(factored, still, row, scratch);
  else
    for (let s = 0; s < patches; s++) {
      const t = scratch[airNodes + s]!;
      row[airNodes + s] = t;
      scratch[airAt[s]!] = scratch[airAt[s]!]! + toAir[s]! * t;
    }
  if (!still) solveBandInPlace(air, airNodes, airBand, scratch);
  for (let a = 0; a < airNodes; a++) row[a] = scratch[order[a]!]!;
  fillPanels(factored, row);
}

/** Right sides once the surfaces of each group are eliminated: theirs are kept in `row`, the groups' put in their place.
 *  @returns c of each group [W], see factored.ts */
function groupRightSides(factored: Factored, row: Float64Array, scratch: Float64Array): Float64Array {
  const { layout, toMean, airAlone, shareAir } = factored;
  const { airNodes, patches, groups, groupOf, airAt } = layout;
  const still = new Float64Array(groups);
  for (let s = 0; s < patches; s++) {
    const b = scratch[airNodes + s]!;
    row[airNodes + s] = b;
    still[groupOf[s]!] = still[groupOf[s]!]! + toMean[s]! * b;
  }
  for (let s = 0; s < patches; s++) {
    const at = airAt[s]!;
    scratch[at] = scratch[at]! + airAlone[s]! * row[airNodes + s]! - shareAir[s]! * still[groupOf[s]!]!;
  }
  for (let g = 0; g < groups; g++) scratch[airNodes + g] = still[g]!;
  return still;
}

/** Air and surfaces from the means of their groups, which lie in `scratch`. */
function fromMeans(factored: Factored, still: Float64Array, row: Float64Array, scratch: Float64Array): void {
  const { layout, air, toAir, fromAir, alone, shareAlone, airAlone, meanAlone, shareAir, perGroup } = factored;
  const { airNodes, patches, groups, groupOf, airAt, airBand } = layout;
  for (let s = 0; s < patches; s++) {
    const at = airAt[s]!;
    const g = groupOf[s]!;
    const y = scratch[airNodes + g]!;
    scratch[at] = scratch[at]! + airAlone[s]! * row[airNodes + s]! - shareAir[s]! * still[g]! + toAir[s]! * y;
    row[airNodes + s] = alone[s]! * row[airNodes + s]! + meanAlone[s]! * y;
  }
  solveBandInPlace(air, airNodes, airBand, scratch);
  for (let g = 0; g < groups; g++) scratch[airNodes + g] = scratch[airNodes + g]! * perGroup[g]! - still[g]!;
  for (let s = 0; s < patches; s++) {
    const at = airNodes + groupOf[s]!;
    scratch[at] = scratch[at]! - fromAir[s]! * scratch[airAt[s]!]!;
  }
  for (let s = 0; s < patches; s++)
    row[airNodes + s] =
      row[airNodes + s]! + shareAlone[s]! * scratch[airNodes + groupOf[s]!]! + airAlone[s]! * scratch[airAt[s]!]!;
}

/** What drives each unknown [W]: air (in `scratch` column by column, and in `row`), surfaces with what their panels pass on. */
function rightSide(
  { layout, gain, held, airToRoom, outerLink }: Factored,
  sources: Sources,
  old: Float64Array | null,
  outsideC: Float64Array | null,
  roomC: number,
  row: Float64Array,
  scratch: Float64Array,
): void {
  const { airNodes, patches, behind, first, order, matAt } = layout;
  const at = airNodes + patches;
  const total = at + behind;
  if (old) for (let k = 0; k < total; k++) row[k] = held[k]! * old[k]!;
  else row.fill(0);
  for (let a = 0; a < airNodes; a++) {
    const v = row[a]! + sources.airW[a]! + (outsideC ? airToRoom[a]! * roomC : 0);
    row[a] = v;
    scratch[order[a]!] = v;
  }
  for (let s = 0; s < patches; s++) {
    const mat = sources.matW[s]!;
    if (mat !== 0) row[matAt[s]!] = row[matAt[s]!]! + mat;
    let carry = outsideC ? outerLink[s]! * outsideC[s]! : 0;
    for (let k = first[s + 1]! - 1; k >= first[s]!; k--) {
      const b = row[at + k]! + carry;
      row[at + k] = b;
      carry = b * gain[k]!;
    }
    scratch[airNodes + s] = row[airNodes + s]! + sources.surfaceW[s]! + carry;
  }
}

/** Temperatures behind the surfaces from those of the surfaces. */
function fillPanels({ layout, gain, pivot }: Factored, row: Float64Array): void {
  const { airNodes, patches, first } = layout;
  const at = airNodes + patches;
  for (let s = 0; s < patches; s++) {
    let inner = row[airNodes + s]!;
    for (let k = first[s]!; k < first[s + 1]!; k++) {
      inner = row[at + k]! * pivot[k]! + gain[k]! * inner;
      row[at + k] = inner;
    }
  }
}
