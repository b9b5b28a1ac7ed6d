import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../physics/enclosure.ts';
import { movedHeater, movedProbe } from './move.ts';

const file = new URL('../../../data/examples/wood-1200.json', import.meta.url);
const wood = JSON.parse(readFileSync(file, 'utf8')) as Enclosure;
const anywhere = fc.double({ min: -5, max: 5, noNaN: true });

describe('moving', () => {
  it('snaps to whole centimetres and leaves the rest of the file alone', () => {
    const moved = movedHeater(wood, 0, { xM: 0.4567 });
    expect(moved.heaters[0]?.xM).toBe(0.46);
    expect(moved.heaters[0]?.zM).toBe(wood.heaters[0]?.zM);
    expect(moved.thermostats).toBe(wood.thermostats);
  });

  it('never lets a heater or a probe leave the box', () => {
    fc.assert(
      fc.property(anywhere, anywhere, anywhere, (xM, yM, zM) => {
        const heater = movedHeater(wood, 0, { xM, yM, zM }).heaters[0];
        const probe = movedProbe(wood, 0, { xM, yM, zM }).thermostats[0]?.probe;
        for (const place of [heater, probe]) {
          if (!place) throw new Error('lost');
          expect(place.xM).toBeGreaterThan(0);
          expect(place.xM).toBeLessThan(wood.box.lengthM);
          expect(place.yM).toBeGreaterThan(0);
          expect(place.yM).toBeLessThan(wood.box.depthM);
          expect(place.zM).toBeGreaterThan(wood.substrate?.depthM ?? 0);
          expect(place.zM).toBeLessThan(wood.box.heightM);
        }
      }),
    );
  });
});
