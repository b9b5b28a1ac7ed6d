// Was a number out of range because it was written in another unit? Says so instead of only "out of range".
// Leaves out: correcting it; a person decides.
import type { Field } from './enclosure-fields.ts';

interface Slip {
  readonly written: string;
  readonly wanted: string;
  readonly convert: (value: number) => number;
}

const slips: Readonly<Record<string, readonly Slip[]>> = {
  m: [
    { written: 'cm', wanted: 'm', convert: (v) => v / 100 },
    { written: 'mm', wanted: 'm', convert: (v) => v / 1000 },
  ],
  'm²': [{ written: 'cm²', wanted: 'm²', convert: (v) => v / 10_000 }],
  '°C': [{ written: '°F', wanted: '°C', convert: (v) => ((v - 32) * 5) / 9 }],
  'share 0 to 1': [{ written: '%', wanted: 'a share', convert: (v) => v / 100 }],
};

/** One sentence when the value would fit in another unit, else null.
 *  @param value number outside the field's limits, in any unit */
export function unitSlip(value: number, field: Field): string | null {
  const { low = -Infinity, high = Infinity } = field;
  for (const slip of slips[field.unit] ?? []) {
    const converted = Number(slip.convert(value).toPrecision(4));
    if (converted > low && converted < high) {
      return `This number is in ${slip.wanted}: if you meant ${value} ${slip.written}, write ${converted}.`;
    }
  }
  return null;
}
