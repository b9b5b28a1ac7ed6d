import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { majorAxis, scaledMassG } from './scaled-mass-index.ts';

const power = (b: number) => [200, 400, 700, 1100].map((lengthMm) => ({ lengthMm, massG: 1e-5 * lengthMm ** b }));

describe('the exponent of mass on length', () => {
  test('is that of a pure power law, with correlation one', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.5, max: 4, noNaN: true }), (b) => {
        const found = majorAxis(power(b));
        if (!found.ok) throw new Error('refused');
        expect(found.value.exponent).toBeCloseTo(b, 8);
        expect(found.value.correlation).toBeCloseTo(1, 10);
        expect(found.value.meanLengthMm).toBe(600);
      }),
    );
  });

  test('does not depend on the units', () => {
    const animals = [
      { lengthMm: 300, massG: 20 },
      { lengthMm: 500, massG: 80 },
      { lengthMm: 620, massG: 170 },
      { lengthMm: 900, massG: 380 },
    ];
    const inches = animals.map(({ lengthMm, massG }) => ({ lengthMm: lengthMm / 25.4, massG: massG / 28.35 }));
    const [a, b] = [majorAxis(animals), majorAxis(inches)];
    if (!a.ok || !b.ok) throw new Error('refused');
    expect(b.value.exponent).toBeCloseTo(a.value.exponent, 10);
  });

  test('is refused for two animals, for one length, and for animals without measure', () => {
    const one = { lengthMm: 500, massG: 100 };
    for (const animals of [
      power(3).slice(0, 2),
      [one, one, one],
      [one, { lengthMm: 0, massG: 1 }, { lengthMm: 9, massG: 0 }],
    ])
      expect(majorAxis(animals)).toMatchObject({ ok: false, faults: [{ code: 'ANIMAL_SCALING' }] });
  });
});

test('the scaled mass at the own length is the own mass, and shorter animals are scaled up', () => {
  expect(scaledMassG(120, 500, 500, 2.9)).toBe(120);
  expect(scaledMassG(120, 500, 1000, 3)).toBeCloseTo(960, 9);
});
