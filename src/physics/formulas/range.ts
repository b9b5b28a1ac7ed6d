// Is a formula being used where its authors tested it? Every formula file exports its value function and a
// `...Range` constant; a caller that cares hands both to rangeNotes. The value itself is always returned:
// outside the range it is an extrapolation, and the note says so. Leaves out: whether the formula is right.
import type { Fault } from '../../shared/fault.ts';

/** Limits of one input, both ends included. */
export interface InputLimit {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

/** Where a formula was tested or is defined; inputs that are not named are free. */
export interface FormulaRange {
  /** Name a person would use, e.g. "Alamdari and Hammond, vertical wall". */
  readonly formula: string;
  /** Source key, as in checks/sources.json. */
  readonly source: string;
  readonly inputs: Readonly<Record<string, InputLimit>>;
}

/** Notes for every input outside the formula's range, all at once; empty when inside.
 *  @param range   the formula's exported range
 *  @param inputs  the values used, named as in the range
 *  @returns faults "PHYS_FORMULA_RANGE"; an input that is not a number counts as outside. */
export function rangeNotes(range: FormulaRange, inputs: Readonly<Record<string, number>>): readonly Fault[] {
  const notes: Fault[] = [];
  for (const [field, limit] of Object.entries(range.inputs)) {
    const got = inputs[field];
    if (got === undefined || (got >= limit.low && got <= limit.high)) continue;
    notes.push(rangeFault(range, field, got, limit));
  }
  return notes;
}

function rangeFault(range: FormulaRange, field: string, got: number, limit: InputLimit): Fault {
  const allowed = `${limit.low} to ${limit.high} ${limit.unit}`.trim();
  return {
    code: 'PHYS_FORMULA_RANGE',
    field,
    got: `${Number(got.toPrecision(4))} ${limit.unit}`.trim(),
    allowed,
    say: `${range.formula} was tested for ${field} ${allowed}; here it is extrapolated.`,
    fix: 'Treat the result as less certain, and measure where it matters.',
    source: range.source,
  };
}
