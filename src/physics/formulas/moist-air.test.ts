import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPointC } from './dew-point.ts';
import {
  dewPointCFromRh,
  humidityRatio,
  relativeHumidityFrac,
  relativeHumidityFracAt,
  vapourPressurePa,
  vapourPressurePaFromRatio,
  virtualTempK,
} from './moist-air.ts';
import { saturationPressurePa, saturationSlopePaPerK } from './saturation-pressure.ts';
import { humidityRatioFromWetBulb, wetBulbC } from './wet-bulb.ts';

const tempC = fc.double({ min: -30, max: 60, noNaN: true });
const rhFrac = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('moist air', () => {
  it('goes to the dew point and back', () => {
    fc.assert(
      fc.property(tempC, (t) => {
        expect(dewPointC(saturationPressurePa(t))).toBeCloseTo(t, 7);
      }),
    );
  });
  it('has dew point below wet bulb below dry bulb', () => {
    fc.assert(
      fc.property(tempC, rhFrac, (t, rh) => {
        const wet = wetBulbC(t, rh);
        expect(wet).toBeLessThanOrEqual(t + 1e-9);
        if (wet > 0.5) expect(dewPointCFromRh(t, rh)).toBeLessThanOrEqual(wet + 0.02);
      }),
    );
  });
  it('gives the humidity back from the wet bulb', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (t, rh) => {
          const ratio = humidityRatio(vapourPressurePa(t, rh));
          expect(humidityRatioFromWetBulb(t, wetBulbC(t, rh))).toBeCloseTo(ratio, 9);
        },
      ),
    );
  });
  it('turns vapour pressure into humidity ratio and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), (pa) => {
        expect(vapourPressurePaFromRatio(humidityRatio(pa)) / pa).toBeCloseTo(1, 12);
      }),
    );
  });
  it('rises steadily with temperature, with the slope of its own derivative', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), (t) => {
        const numeric = (saturationPressurePa(t + 1e-3) - saturationPressurePa(t - 1e-3)) / 2e-3;
        expect(saturationSlopePaPerK(t) / numeric).toBeCloseTo(1, 6);
        expect(numeric).toBeGreaterThan(0);
      }),
    );
  });
  it('joins ice and water within 0.01 % at the triple point', () => {
    expect(saturationPressurePa(0.0101) / saturationPressurePa(0.01)).toBeCloseTo(1, 4);
  });
  it('dries when warmed: 20 °C 50 % becomes 30.9 % at 28 °C', () => {
    expect(relativeHumidityFracAt(20, 0.5, 28)).toBeCloseTo(0.309, 3);
    expect(relativeHumidityFrac(28, vapourPressurePa(28, 0.4))).toBeCloseTo(0.4, 12);
  });
  it('calls dry air dry, and damp air lighter', () => {
    expect(dewPointC(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(virtualTempK(25, 0.01)).toBeGreaterThan(virtualTempK(25, 0));
  });
});
