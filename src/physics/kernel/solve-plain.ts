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
  const { layout, lu, air, toAir } = factored;
  const { airNodes, patches, order, airAt, halfBand } = layout;
  rightSide(factored, sources, old, outsideC, roomC, row, scratch);
  solveBandInPlace(air, airNodes, halfBand, scratch);
  for (let s = 0; s < patches; s++) scratch[airNodes + s] = scratch[airNodes + s]! + toAir[s]! * scratch[airAt[s]!]!;
  solveInPlace(lu, patches, scratch, airNodes);
  for (let a = 0; a < airNodes; a++) scratch[order[a]!] = row[a]!;
  for (let s = 0; s < patches; s++) {
    const t = scratch[airNodes + s]!;
    row[airNodes + s] = t;
    scratch[airAt[s]!] = scratch[airAt[s]!]! + toAir[s]! * t;
  }
  solveBandInPlace(air, airNodes, halfBand, scratch);
  for (let a = 0; a < airNodes; a++) row[a] = scratch[order[a]!]!;
  fillPanels(factored, row);
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
