// Parts 10 and 11: rows to write in, and who signs.
import type { Block } from '../blocks.ts';
import { text } from '../blocks.ts';
import type { Tongue } from '../tongue.ts';

export function recordsPart({ w, m }: Tongue, rows: number): readonly Block[] {
  const degrees = ` °${m.settings.temperature}`;
  const readings = w.records.readings.map((head, i) => (i >= 1 && i <= 3 ? `${head}${degrees}` : head));
  return [
    { kind: 'form', head: readings, widths: [1.7, 1.2, 1.2, 1.2, 1.1, 2.4], rows },
    { kind: 'form', head: w.records.keeping, widths: [1.3, 1, 1.9, 1.1, 1.1, 2.4], rows },
  ];
}

export const signaturesPart = ({ w }: Tongue): readonly Block[] => [
  text(w.signatures.say),
  {
    kind: 'hand',
    lines: [
      { label: w.signatures.seller, value: '' },
      { label: w.signatures.keeper, value: '' },
    ],
  },
];
