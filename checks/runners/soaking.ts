// Ours for the tables about heat soaking into solids.
import { erf, erfc } from '../../src/physics/formulas/error-function.ts';
import { finEfficiency } from '../../src/physics/formulas/fin-efficiency.ts';
import { penetrationDepthM } from '../../src/physics/formulas/penetration-depth.ts';
import {
  depthOfLevelM,
  riseConstantFluxK,
  shareUnderFilm,
  tempSurfaceHeldC,
} from '../../src/physics/formulas/semi-infinite.ts';
import { slabFirstRoot, slabFirstWeight } from '../../src/physics/formulas/slab.ts';
import { num } from '../inputs.ts';
import type { Runner } from '../table.ts';
import { bridgedWall, cubeInsideC, heatedColumn, mdfWallStep } from './conduction-cases.ts';

export const soakingRunners: Readonly<Record<string, Runner>> = {
  erf: (i) => ({ erf: erf(num(i, 'x')), erfc: erfc(num(i, 'x')) }),
  waterMain: (i) => ({
    depthM: depthOfLevelM(
      num(i, 'levelC'),
      num(i, 'days') * 86_400,
      num(i, 'diffusivityM2PerS'),
      num(i, 'startC'),
      num(i, 'surfaceC'),
    ),
  }),
  surfaceHeld: (i) => ({
    tempC: tempSurfaceHeldC(
      num(i, 'depthM'),
      num(i, 'timeS'),
      num(i, 'diffusivityM2PerS'),
      num(i, 'startC'),
      num(i, 'surfaceC'),
    ),
  }),
  constantFlux: (i) => ({
    rise: riseConstantFluxK(
      num(i, 'depthM'),
      num(i, 'timeS'),
      num(i, 'fluxWPerM2'),
      num(i, 'conductivityWPerMK'),
      num(i, 'diffusivityM2PerS'),
    ),
  }),
  underFilm: (i) => ({
    share: shareUnderFilm(
      num(i, 'depthM'),
      num(i, 'timeS'),
      num(i, 'filmWPerM2K'),
      num(i, 'conductivityWPerMK'),
      num(i, 'diffusivityM2PerS'),
    ),
  }),
  slab: (i) => {
    const root = slabFirstRoot(num(i, 'biot'));
    return { root, weight: slabFirstWeight(root) };
  },
  penetration: (i) => ({ depthMm: 1000 * penetrationDepthM(num(i, 'diffusivityM2PerS'), num(i, 'periodS')) }),
  fin: (i) => ({
    efficiency: finEfficiency(
      num(i, 'conductivityWPerMK'),
      num(i, 'thicknessM'),
      num(i, 'lengthM'),
      num(i, 'filmWPerM2K'),
    ),
  }),
  heatedColumn: (i) => heatedColumn(num(i, 'cells')),
  bridgedWall: () => bridgedWall(),
  mdfWallStep: (i) => mdfWallStep(num(i, 'cells'), num(i, 'stepS')),
  cube: (i) => cubeInsideC(i),
};
