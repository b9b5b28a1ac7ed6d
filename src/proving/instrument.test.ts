// Instruments: what a check changes, how long it counts, what is refused.
import { describe, expect, it } from 'vitest';
import { carriedErrors, checkLastsS, type Instrument, trustIn } from './instrument.ts';
import { checkSteps, finishCheck, saltRhPct } from './instrument-check.ts';

const at = 1_700_000_000;
const checked = (shown: number, atS = at): Instrument => ({
  id: 'a',
  name: 'a',
  checks: [{ quantity: 'tempC', atS, truth: 0, shown, how: 'ice' }],
});

describe('trust', () => {
  it('unchecked carries the larger error', () =>
    expect(trustIn(null, 'tempC', at)).toMatchObject({
      correction: 0,
      error: carriedErrors.tempC.unchecked,
      checked: false,
    }));
  it('an ice point corrects and halves it', () =>
    expect(trustIn(checked(0.4), 'tempC', at + 60)).toMatchObject({
      correction: -0.4,
      error: carriedErrors.tempC.checked,
      checked: true,
    }));
  it('counts for a year', () => {
    expect(trustIn(checked(0.4), 'tempC', at + checkLastsS).checked).toBe(true);
    expect(trustIn(checked(0.4), 'tempC', at + checkLastsS + 1)).toMatchObject({
      checked: false,
      correction: 0,
      dueS: at + checkLastsS,
    });
  });
  it('does not count before it was made, nor for another quantity', () => {
    expect(trustIn(checked(0.4), 'tempC', at - 1).checked).toBe(false);
    expect(trustIn(checked(0.4), 'rhPct', at + 1).checked).toBe(false);
  });
  it('the newest counts, and of two within one second the one written down later', () => {
    const checks = (...shown: readonly (readonly [number, number])[]): Instrument => ({
      id: 'a',
      name: 'a',
      checks: shown.flatMap(([value, atS]) => checked(value, atS).checks),
    });
    expect(trustIn(checks([1, at], [0.2, at]), 'tempC', at).correction).toBe(-0.2);
    expect(trustIn(checks([0.2, at], [1, at - 5]), 'tempC', at).correction).toBe(-0.2);
  });
  it('a broken instrument is not corrected', () =>
    expect(trustIn(checked(3), 'tempC', at + 1)).toMatchObject({ checked: false, correction: 0 }));
});

describe('checks', () => {
  it('table salt stands between its neighbours of the table', () => {
    expect(saltRhPct('sodium-chloride', 15)).toBe(75.6);
    expect(saltRhPct('sodium-chloride', 22.5)).toBeCloseTo(75.4, 9);
    expect(saltRhPct('magnesium-chloride', 25)).toBe(32.8);
    expect(saltRhPct('sodium-chloride', 5)).toBe(75.6);
  });
  it('ends in an offset', () => {
    const found = finishCheck('ice', [0.5, 0.4, 0.3], { atS: at });
    expect(found.ok && found.value.offset).toBeCloseTo(-0.4, 9);
    const salt = finishCheck('salt', [72, 72.4], { atS: at, salt: 'sodium-chloride', tempC: 20 });
    expect(salt.ok && salt.value.offset).toBeCloseTo(3.3, 9);
  });
  it('tells every fault at once', () => {
    const found = finishCheck('salt', [60], { atS: at });
    expect(found.ok ? [] : found.faults.map((f) => f.code)).toEqual([
      'CHECK_TOO_FEW',
      'CHECK_JAR_TEMP',
      'CHECK_BROKEN',
    ]);
    const moving = finishCheck('ice', [1.5, 0.1], { atS: at });
    expect(moving.ok ? [] : moving.faults.map((f) => f.code)).toEqual(['CHECK_UNSETTLED']);
  });
  it('waits longer for a sensor in a case', () => {
    const wait = (inCase: boolean) => checkSteps('salt', inCase).reduce((s, x) => s + x.waitMin, 0);
    expect(wait(true)).toBeGreaterThan(wait(false));
  });
});
