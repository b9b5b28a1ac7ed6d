import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyEnclosure, testMaterials } from '../../../checks/box/random-enclosure.ts';
import { factorInPlace, solveInPlace } from '../dense.ts';
import { factorBandInPlace, solveBandInPlace } from '../dense-band.ts';
import { factorNetwork, networkAt, startState } from '../network.ts';
import { boxGeometry, modelFrom } from '../simulate.ts';
import { noSources } from '../solve-network.ts';
import { filmSphere } from './body-law.ts';
import { eliminated, factorPlain } from './factored.ts';
import { kernelInstance } from './instance.ts';
import { solveInKernel, tableByte } from './resident.ts';
import { solvePlain } from './solve-plain.ts';

/** A matrix in which every row loses at least what it gains, and a right side. */
const system = fc.integer({ min: 1, max: 23 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    off: fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: n * n, maxLength: n * n }),
    right: fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: n, maxLength: n }),
  }),
);

function matrixOf(n: number, off: readonly number[], halfBand = n): Float64Array {
  const a = Float64Array.from(off, (v, k) => (Math.abs((k % n) - Math.floor(k / n)) <= halfBand ? -v : 0));
  for (let i = 0; i < n; i++) {
    a[i * n + i] = 0;
    a[i * n + i] = 1 - a.subarray(i * n, i * n + n).reduce((s, v) => s + v, 0);
  }
  return a;
}

/** Largest amount by which an answer misses its equations. */
function missOf(a: Float64Array, n: number, x: Float64Array, right: readonly number[]): number {
  let most = 0;
  for (let i = 0; i < n; i++) {
    let s = -right[i]!;
    for (let j = 0; j < n; j++) s += a[i * n + j]! * x[j]!;
    most = Math.max(most, Math.abs(s));
  }
  return most;
}

describe('linear equations', () => {
  it('are satisfied by their answers, with a full matrix', () => {
    fc.assert(
      fc.property(system, ({ n, off, right }) => {
        const a = matrixOf(n, off);
        const lu = a.slice();
        factorInPlace(lu, n);
        const x = Float64Array.from([7, ...right]);
        solveInPlace(lu, n, x, 1);
        expect(missOf(a, n, x.subarray(1), right)).toBeLessThan(1e-9);
        expect(x[0]).toBe(7);
      }),
    );
  });

  it('are satisfied by their answers, with a band', () => {
    fc.assert(
      fc.property(system, fc.integer({ min: 1, max: 4 }), ({ n, off, right }, w) => {
        const a = matrixOf(n, off, w);
        const band = new Float64Array(n * (2 * w + 1));
        for (let i = 0; i < n; i++)
          for (let j = Math.max(0, i - w); j <= Math.min(n - 1, i + w); j++)
            band[i * (2 * w + 1) + w + j - i] = a[i * n + j]!;
        factorBandInPlace(band, n, w);
        const x = Float64Array.from(right);
        solveBandInPlace(band, n, w, x);
        expect(missOf(a, n, x, right)).toBeLessThan(1e-9);
      }),
    );
  });

  it('without an answer are refused', () => {
    expect(() => factorInPlace(new Float64Array(9), 3)).toThrow('zero pivot');
    expect(() => factorBandInPlace(new Float64Array(9), 3, 1)).toThrow('zero pivot');
  });
});

describe('the kernel', () => {
  it('is what its source compiles to', { timeout: 60_000 }, () => {
    const script = fileURLToPath(new URL('../../../scripts/build-kernel.mjs', import.meta.url));
    expect(execFileSync(process.execPath, [script, '--check'], { encoding: 'utf8' })).toContain('up to date');
  });

  it('has room for its own numbers below the box', () => {
    expect(kernelInstance()!.freeFrom()).toBeLessThanOrEqual(tableByte);
  });

  it('has the film law of heaters', () => {
    const length = fc.double({ min: 0.02, max: 0.3, noNaN: true });
    const delta = fc.double({ min: 0, max: 600, noNaN: true });
    fc.assert(
      fc.property(length, delta, fc.double({ min: -60, max: 450, noNaN: true }), (diameterM, deltaK, filmC) => {
        const law = filmSphere(diameterM, deltaK, filmC);
        expect(Math.abs(kernelInstance()!.filmSphere(diameterM, deltaK, filmC) / law - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('gives the plain answers to rounding, for every box', { timeout: 60_000 }, () => {
    expect(kernelInstance()).not.toBeNull();
    fc.assert(
      fc.property(anyEnclosure, fc.boolean(), fc.constantFrom(8, 16, 30), (enclosure, steady, columns) => {
        // 30 columns that radiate as 9 of their own, the others each by itself
        const model = modelFrom(boxGeometry(enclosure, testMaterials, columns, columns > 16 ? 9 : columns));
        const state = startState(model, 25);
        state.row.forEach((_, k) => {
          state.row[k] = 25 + Math.sin(k);
        });
        const net = networkAt(model, state, 18, 20);
        const factored = factorNetwork(model, net, steady ? 0 : 0.1);
        const sources = noSources(model);
        sources.airW[0] = 3;
        sources.surfaceW.fill(0.2);
        sources.matW.fill(0.1);
        const plain = eliminated(model, net, steady ? 0 : 0.1);
        factorPlain(plain);
        factored.lu.forEach((v, k) => {
          expect(plain.lu[k]).toBeCloseTo(v, 9);
        });
        factored.air.forEach((v, k) => {
          expect(plain.air[k]).toBeCloseTo(v, 9);
        });
        const old = steady ? null : state.row;
        const a = startState(model, 0);
        const b = startState(model, 0);
        const scratch = new Float64Array(net.airNodes + net.own.length);
        solvePlain(factored, sources, old, net.outsideC, 18, b.row, scratch);
        expect(solveInKernel(model, factored, sources, old, net.outsideC, 18, a.row)).toBe(true);
        if (!factored.layout.hasMats) {
          sources.matW.fill(0);
          solvePlain(factored, sources, old, net.outsideC, 18, b.row, scratch);
        }
        for (let k = 0; k < a.row.length; k++) expect(a.row[k]).toBeCloseTo(b.row[k]!, 9);
      }),
      { numRuns: 60, seed: 5 },
    );
  });
});
