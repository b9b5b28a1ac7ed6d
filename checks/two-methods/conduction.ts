// The transient wall solver against closed forms, and the convergence of both conduction solvers.
import { transientWall } from '../../src/physics/conduction/transient-wall.ts';
import { shareUnderFilm } from '../../src/physics/formulas/semi-infinite.ts';
import { slabShareLeft } from '../../src/physics/formulas/slab.ts';
import type { CheckKind, CheckRow } from '../check-row.ts';
import { heatedColumn } from '../runners/conduction-cases.ts';

const mdf = { conductivityWPerMK: 0.14, densityKgPerM3: 600, heatCapacityJPerKgK: 1700 };
const diffusivity = 0.14 / (600 * 1700);

const row = (
  id: string,
  title: string,
  quantity: string,
  expected: CheckRow['expected'],
  ours: number,
  unit: string,
  abs: number,
  why: string,
  kind: CheckKind = 'two-methods',
  source = 'CARSLAW1959',
): CheckRow => ({
  id,
  title,
  quantity,
  kind,
  source,
  at: 'closed form',
  provenance: 'derived',
  expected,
  ours,
  unit,
  tolerance: { abs },
  why,
});

/** Share of the way to the air temperature at the first face, by the solver. */
function faceShare(thicknessM: number, seconds: number, bothFaces: boolean): number {
  const { states } = transientWall({
    layers: [{ ...mdf, thicknessM }],
    first: { kind: 'film', filmWPerM2K: 8, airC: () => 1 },
    last: bothFaces ? { kind: 'film', filmWPerM2K: 8, airC: () => 1 } : { kind: 'adiabatic' },
    startC: 0,
    stepS: 2,
    durationS: seconds,
    cellsPerLayer: 200,
  });
  return states.at(-1)?.firstFaceC ?? Number.NaN;
}

function columnOrder(): number {
  const exact = heatedColumn(256);
  const worst = (cells: number) => {
    const coarse = heatedColumn(cells);
    return Math.max(...Object.keys(exact).map((key) => Math.abs((coarse[key] ?? 0) - (exact[key] ?? 0))));
  };
  return Math.log2(worst(16) / worst(32));
}

export async function cases(): Promise<CheckRow[]> {
  const thick = shareUnderFilm(0, 600, 8, mdf.conductivityWPerMK, diffusivity);
  const half = 0.009;
  const slab = 1 - slabShareLeft((8 * half) / mdf.conductivityWPerMK, (diffusivity * 3600) / half ** 2, 1);
  return [
    row(
      'WALL-THICK',
      'Thick MDF under a film after ten minutes: stepped wall against the error function',
      'face',
      thick,
      faceShare(0.1, 600, false),
      '-',
      2e-4,
      'Cells of 0.5 mm and steps of 2 s.',
    ),
    row(
      'WALL-PLATE',
      'MDF plate of 18 mm between films after an hour: stepped wall against the series',
      'face',
      slab,
      faceShare(0.018, 3600, true),
      '-',
      2e-4,
      'Cells of 0.1 mm and steps of 2 s; later terms of the series have died away.',
    ),
    row(
      'COLUMN-ORDER',
      'Order of convergence of the plane conduction grid',
      'order',
      { low: 1.8, high: 2.3 },
      columnOrder(),
      '-',
      0,
      'Central differences are of second order; the corner where 20 meets 0 °C disturbs it a little.',
      'self-consistency',
      'OWN',
    ),
  ];
}
