// Planck shares against numerical integration, and heat balance of grey exchange over random boxes.
import { greyNetFluxWPerM2, greyParallelFluxWPerM2 } from '../../src/physics/formulas/grey-exchange.ts';
import { blackBodyFractionBelow, secondRadiationConstantUmK } from '../../src/physics/formulas/planck-band.ts';
import { viewFactorParallel } from '../../src/physics/formulas/view-factor-parallel.ts';
import { viewFactorPerpendicular } from '../../src/physics/formulas/view-factor-perpendicular.ts';
import type { CheckKind, CheckRow } from '../check-row.ts';
import { seededRandom } from '../seeded-random.ts';

const row = (
  id: string,
  title: string,
  quantity: string,
  kind: CheckKind,
  expected: number,
  ours: number,
  unit: string,
  abs: number,
  why: string,
): CheckRow => ({
  id,
  title,
  quantity,
  kind,
  source: 'OWN',
  at: kind === 'two-methods' ? 'second method' : 'balance',
  provenance: 'derived',
  expected,
  ours,
  unit,
  tolerance: { abs },
  why,
});

/** Share below a wavelength by Simpson's rule on x³/(e^x - 1), x = c2 / (lambda T). */
function fractionByIntegration(lambdaTUmK: number): number {
  const from = secondRadiationConstantUmK / lambdaTUmK;
  const to = from + 60;
  const n = 20_000;
  const h = (to - from) / n;
  const f = (x: number) => x ** 3 / Math.expm1(x);
  let sum = f(from) + f(to);
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return ((15 / Math.PI ** 4) * sum * h) / 3;
}

/** The six view factors of a box, faces in the order floor, ceiling, front, back, left, right. */
function boxFactors(l: number, w: number, h: number): number[][] {
  const facing = (a: number, b: number, d: number) => {
    const face = { x: [0, a], y: [0, b] } as const;
    return viewFactorParallel(face, face, d);
  };
  const corner = (edge: number, from: number, to: number) =>
    viewFactorPerpendicular({ along: [0, edge], out: [0, from] }, { along: [0, edge], out: [0, to] });
  const [fc, ff, fe] = [facing(l, w, h), corner(l, w, h), corner(w, l, h)];
  const [rf, rb, re] = [corner(l, h, w), facing(l, h, w), corner(h, l, w)];
  const [ef, ew, ee] = [corner(w, h, l), corner(h, w, l), facing(w, h, l)];
  return [
    [0, fc, ff, ff, fe, fe],
    [fc, 0, ff, ff, fe, fe],
    [rf, rf, 0, rb, re, re],
    [rf, rf, rb, 0, re, re],
    [ef, ef, ew, ew, 0, ee],
    [ef, ef, ew, ew, ee, 0],
  ];
}

function worstBalance(): number {
  const random = seededRandom(23);
  let worst = 0;
  for (let n = 0; n < 300; n++) {
    const [l, w, h] = [0.2 + 1.8 * random(), 0.2 + 0.8 * random(), 0.15 + random()];
    const areas = [l * w, l * w, l * h, l * h, w * h, w * h];
    const faces = areas.map(() => ({ tempC: 15 + 60 * random(), emissivity: 0.05 + 0.95 * random() }));
    const flux = greyNetFluxWPerM2(faces, boxFactors(l, w, h));
    const net = flux.reduce((sum, q, i) => sum + q * (areas[i] ?? 0), 0);
    const moved = flux.reduce((sum, q, i) => sum + Math.abs(q) * (areas[i] ?? 0), 0);
    worst = Math.max(worst, Math.abs(net) / moved);
  }
  return worst;
}

export async function cases(): Promise<CheckRow[]> {
  const fractions = [300, 1000, 2898, 8000, 40_000].map((x) =>
    row(
      'PLANCK-SUM',
      `Black-body share below ${x} µm K: series against integration`,
      'share',
      'two-methods',
      fractionByIntegration(x),
      blackBodyFractionBelow(x, 1),
      '-',
      1e-9,
      'Error of the integration.',
    ),
  );
  const two = greyNetFluxWPerM2(
    [
      { tempC: 35, emissivity: 0.9 },
      { tempC: 22, emissivity: 0.84 },
    ],
    [
      [0, 1],
      [1, 0],
    ],
  );
  return [
    ...fractions,
    row(
      'GREY-TWO',
      'Two facing plates: radiosity against the closed form',
      'flux',
      'two-methods',
      greyParallelFluxWPerM2(35, 0.9, 22, 0.84),
      two[0] ?? Number.NaN,
      'W/m²',
      1e-9,
      'Rounding only.',
    ),
    row(
      'GREY-BALANCE',
      'Grey faces of 300 random boxes: heat lost by all together, share of heat moved',
      'largest error',
      'self-consistency',
      0,
      worstBalance(),
      '-',
      1e-10,
      'Rounding only: what one face loses another gains.',
    ),
  ];
}
