import { describe, expect, it } from 'vitest';
import { screenAirViscosityM2PerS, screenDrag, screenLossByPores, screenSpeedMPerS } from './screen-flow.ts';
import { screenLossBailey } from './screen-loss.ts';

const meshes = [0.3, 0.45, 0.6, 0.8].flatMap((openFrac) =>
  [0.0002, 0.0003, 0.0008].map((wireM) => ({ openFrac, wireM })),
);
const reynolds = [0.3, 0.5, 1, 2, 4, 7, 10];
const faceSpeed = (openFrac: number, wireM: number, re: number) => (re * screenAirViscosityM2PerS * openFrac) / wireM;

describe('a screen as line plus square', () => {
  it.each(meshes)('follows the law within 8 %% for Re 0.3 to 10: %o', (mesh) => {
    const { linearMPerS, quadratic } = screenDrag(mesh);
    for (const re of reynolds) {
      const u = faceSpeed(mesh.openFrac, mesh.wireM, re);
      const law = (screenLossByPores(mesh, u) * u * u) / 2;
      expect(Math.abs((linearMPerS * u + (quadratic * u * u) / 2) / law - 1)).toBeLessThan(0.08);
    }
  });

  it.each(meshes)('gives the speed that the law itself gives, found by halving, within 8 %%: %o', (mesh) => {
    for (const [head, without] of [
      [0.001, 1],
      [0.045, 1],
      [0.02, 2.78],
      [0.015, 32],
    ] as const) {
      let low = 1e-6;
      let high = 2;
      for (let i = 0; i < 80; i++) {
        const u = (low + high) / 2;
        if (((without + screenLossByPores(mesh, u)) * u * u) / 2 > head) high = u;
        else low = u;
      }
      const re = (low / mesh.openFrac) * (mesh.wireM / screenAirViscosityM2PerS);
      if (re < 0.3 || re > 10) continue;
      expect(Math.abs(screenSpeedMPerS(head, without, screenDrag(mesh)) / low - 1)).toBeLessThan(0.08);
    }
  });

  it('is no hindrance where there are no wires', () => {
    const drag = screenDrag({ openFrac: 1, wireM: 0.0003 });
    expect(screenSpeedMPerS(0.045, 1, drag)).toBeCloseTo(0.3, 12);
  });

  it('hinders more the finer the mesh and the thinner its wires', () => {
    const speed = (openFrac: number, wireM: number) => screenSpeedMPerS(0.045, 1, screenDrag({ openFrac, wireM }));
    expect(speed(0.4, 0.0003)).toBeLessThan(speed(0.6, 0.0003));
    expect(speed(0.6, 0.0002)).toBeLessThan(speed(0.6, 0.0005));
  });

  it('takes the speed in the pores, not that on the face', () => {
    const mesh = { openFrac: 0.6, wireM: 0.0003 };
    expect(screenLossByPores(mesh, 0.06)).toBe(screenLossBailey(0.6, 0.0003, 0.1, screenAirViscosityM2PerS));
  });
});
