// Does the diagnosis name the mistake that was made, and leave healthy homes alone? Logs of every mistake from the
// different model, with noise and biased sensors, on seeds that were never looked at while the diagnosis was written.
import { type Cause, causes } from '../../src/proving/diagnosis/cause.ts';
import { diagnose } from '../../src/proving/diagnosis/diagnose.ts';
import type { CheckRow } from '../check-row.ts';
import { faultHome } from './fault-homes.ts';
import { exampleHome, materials, otherModelKnows, priors } from './homes-of-check.ts';

const firstSeed = 710_001;
const each = 6;
const healthyHomes = 40;
/** What the keeper dials by mistake, and the middle of what the animal wants [degC]. */
const baskingC = 32;
const baskingAimC = 31;

/** Homes in which a mistake can be made and seen: a mat for deep substrate; two ends; a dial far from the basking figure. */
const homesFor = (cause: Cause | null): readonly string[] => {
  if (cause === 'deep-substrate') return ['tub-mat-600'];
  if (cause === 'probe-cool-end') return ['wood-1200', 'large-wood-1800', 'pvc-1200'];
  if (cause === 'dial-set-to-basking') return ['wood-1200', 'tall-wood', 'tub-mat-600'];
  return otherModelKnows;
};

export async function cases(): Promise<CheckRow[]> {
  let seed = firstSeed;
  const suspectsOf = (cause: Cause | null, i: number): Cause[] => {
    const homes = homesFor(cause);
    const planned = exampleHome(homes[i % homes.length]!);
    const { log } = faultHome(planned, materials, seed++, cause, baskingC);
    return diagnose({ enclosure: planned, materials, priors, log, baskingAimC }).suspects.map((s) => s.cause);
  };
  const found = causes.map((cause) => ({
    cause,
    right: Array.from({ length: each }, (_, i) => suspectsOf(cause, i).slice(0, 2).includes(cause)).filter(Boolean)
      .length,
  }));
  const blamed = Array.from({ length: healthyHomes }, (_, i) => suspectsOf(null, i).length > 0).filter(Boolean).length;
  const own = {
    kind: 'self-consistency' as const,
    source: 'OTHER-BOX',
    at: `seeds from ${firstSeed}`,
    provenance: 'derived' as const,
    tolerance: { abs: 0 },
    unit: '%',
    why: 'Set before the logs were made: the right cause among the first two in at least 80 of 100, a healthy log blamed in at most 5.',
  };
  const right = found.reduce((s, f) => s + f.right, 0);
  const list = found.map((f) => `${f.cause} ${f.right}/${each}`).join(', ');
  return [
    {
      ...own,
      id: 'DIAG-1',
      title: `Right cause among the first two, ${each} logs of each mistake (${list})`,
      quantity: 'share',
      expected: { low: 80, high: 100 },
      ours: (100 * right) / (each * causes.length),
    },
    {
      ...own,
      id: 'DIAG-2',
      title: `Healthy logs called faulty, ${healthyHomes} homes`,
      quantity: 'share',
      expected: { low: 0, high: 5 },
      ours: (100 * blamed) / healthyHomes,
    },
  ];
}
