// Laws of the small matrices: a solution solves, a factor multiplies back, a draw has the right spread.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { backSolve, choleskyFactor, choleskySolve, inverseDiagonal } from './positive-matrix.ts';

const n = 4;
/** A positive matrix from any square one: its square and a little. */
const positive = fc
  .array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: n * n, maxLength: n * n })
  .map((v) => {
    const a = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        for (let k = 0; k < n; k++)
          a[i * n + j] = a[i * n + j]! + v[i * n + k]! * v[j * n + k]! + (i === j ? 0.25 / n : 0);
    return a;
  });
const times = (a: Float64Array, x: Float64Array) =>
  Float64Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => a[i * n + j]! * x[j]!).reduce((s, v) => s + v, 0),
  );

it('solves', () => {
  fc.assert(
    fc.property(
      positive,
      fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: n, maxLength: n }),
      (a, b) => {
        const back = times(a, choleskySolve(choleskyFactor(a, n), n, Float64Array.from(b)));
        for (const [i, v] of b.entries()) expect(back[i]).toBeCloseTo(v, 6);
      },
    ),
  );
});

it('variances are those of the inverse, and draws have them', () => {
  fc.assert(
    fc.property(positive, (a) => {
      const l = choleskyFactor(a, n);
      const variances = inverseDiagonal(l, n);
      // the draw map M = L^-T has M M^T = A^-1
      const columns = Array.from({ length: n }, (_, k) =>
        backSolve(
          l,
          n,
          Float64Array.from({ length: n }, (_, i) => (i === k ? 1 : 0)),
        ),
      );
      for (let i = 0; i < n; i++) {
        const spread = columns.reduce((s, c) => s + c[i]! ** 2, 0);
        expect(Math.abs(spread - variances[i]!)).toBeLessThan(1e-6 * Math.max(1, spread));
      }
    }),
  );
});

it('refuses what is not positive', () => expect(() => choleskyFactor(Float64Array.from([1, 2, 2, 1]), 2)).toThrow());
