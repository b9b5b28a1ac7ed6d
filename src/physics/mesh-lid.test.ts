// What passes a mesh lid, and that the defaults are those of data/mesh.json.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flatExchangeEpsteinM3PerS } from './formulas/opening-flow.ts';
import { screenDrag } from './formulas/screen-flow.ts';
import { meshLidExchangeM3PerS, plumePassFrac, plumeSpeedMPerS, usualMesh } from './mesh-lid.ts';

interface Kind {
  readonly id: string;
  readonly openFrac: { readonly value: number };
  readonly wireM: { readonly value: number };
}
const kinds = JSON.parse(readFileSync(new URL('../../data/mesh.json', import.meta.url), 'utf8')) as Kind[];
const drag = screenDrag(usualMesh);
const none = screenDrag({ openFrac: 1, wireM: usualMesh.wireM });

describe('mesh lid', () => {
  it('takes fly mesh where the file says no more', () => {
    const fly = kinds.find((k) => k.id === 'fly-mesh')!;
    expect(usualMesh).toEqual({ openFrac: fly.openFrac.value, wireM: fly.wireM.value });
  });

  it("lets a fifth to a third of an emitter's plume pass a mesh of the usual kinds", () => {
    const speed = plumeSpeedMPerS(0.075, 75, 0.02, 0.09);
    expect(speed).toBeGreaterThan(0.25);
    expect(speed).toBeLessThan(0.35);
    const passes = Object.fromEntries(
      kinds.map((k) => [k.id, plumePassFrac(speed, screenDrag({ openFrac: k.openFrac.value, wireM: k.wireM.value }))]),
    );
    expect(passes['fly-mesh']).toBeGreaterThan(0.2);
    expect(passes['fly-mesh']).toBeLessThan(0.33);
    expect(passes['insect-mesh']!).toBeLessThan(passes['fly-mesh']!);
    expect(passes['fly-mesh']!).toBeLessThan(passes['coarse-mesh']!);
    expect(passes['coarse-mesh']!).toBeLessThan(passes['welded-wire']!);
    expect(passes['welded-wire']!).toBeLessThan(1);
  });

  it('lets a third less of a plume of a quarter of the power pass', () => {
    const at = (powerW: number) => plumePassFrac(plumeSpeedMPerS(0.075, powerW, 0.02, 0.09), drag);
    const less = 1 - at(19) / at(75);
    expect(less).toBeGreaterThan(0.28);
    expect(less).toBeLessThan(0.36);
  });

  it('without wires: a whole plume, and the law of a plain hole', () => {
    expect(plumePassFrac(0.3, none)).toBeCloseTo(1, 12);
    const areaM2 = 0.405;
    const open = flatExchangeEpsteinM3PerS(2 * Math.sqrt(areaM2 / Math.PI), 3, 295);
    expect(meshLidExchangeM3PerS(areaM2, 0.45, 3, 295, none)).toBeCloseTo(open, 12);
    expect(meshLidExchangeM3PerS(areaM2, 0.45, 3, 295, drag)).toBeLessThan(open);
    expect(meshLidExchangeM3PerS(areaM2, 0.45, 3, 295, drag)).toBeGreaterThan(0.3 * open);
  });

  it('nothing trades places under warmer air', () => {
    expect(meshLidExchangeM3PerS(0.4, 0.45, -1, 295, drag)).toBe(0);
  });
});
