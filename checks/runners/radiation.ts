// Ours for the tables about view factors, grey exchange, spectra and lamps.
import { coneIrradianceWPerM2 } from '../../src/physics/formulas/cone-irradiance.ts';
import { emitterSplit } from '../../src/physics/formulas/emitter-radiant-fraction.ts';
import { greyParallelFluxWPerM2 } from '../../src/physics/formulas/grey-exchange.ts';
import {
  blackBodyFractionBelow,
  blackBodyFractionBetween,
  peakWavelengthUm,
} from '../../src/physics/formulas/planck-band.ts';
import {
  viewFactorDisks,
  viewFactorElementParallel,
  viewFactorElementPerpendicular,
} from '../../src/physics/formulas/view-factor-element.ts';
import { viewFactorParallel } from '../../src/physics/formulas/view-factor-parallel.ts';
import { viewFactorPerpendicular } from '../../src/physics/formulas/view-factor-perpendicular.ts';
import { viewFactorPointToRectangle } from '../../src/physics/formulas/view-factor-point.ts';
import { list, num } from '../inputs.ts';
import type { Inputs, Runner } from '../table.ts';

/** View factors from the floor of a box to its other faces. */
function fromFloor(lengthM: number, widthM: number, heightM: number) {
  const floor = { x: [0, lengthM], y: [0, widthM] } as const;
  const ceiling = viewFactorParallel(floor, floor, heightM);
  const front = viewFactorPerpendicular(
    { along: [0, lengthM], out: [0, widthM] },
    { along: [0, lengthM], out: [0, heightM] },
  );
  const end = viewFactorPerpendicular(
    { along: [0, widthM], out: [0, lengthM] },
    { along: [0, widthM], out: [0, heightM] },
  );
  const endToFloor = viewFactorPerpendicular(
    { along: [0, widthM], out: [0, heightM] },
    { along: [0, widthM], out: [0, lengthM] },
  );
  return { ceiling, front, end, sum: ceiling + 2 * front + 2 * end, endToFloor };
}

function pointShares(i: Inputs) {
  const [x = 0, y = 0, z = 0] = list(i, 'atM');
  const [l = 0, w = 0, h = 0] = list(i, 'boxM');
  const share = (a: readonly [number, number], b: readonly [number, number], d: number) =>
    viewFactorPointToRectangle({ x: a, y: b }, d);
  const alongX = [-x, l - x] as const;
  const alongY = [-y, w - y] as const;
  const alongZ = [-z, h - z] as const;
  const faces = {
    floor: share(alongX, alongY, z),
    ceiling: share(alongX, alongY, h - z),
    nearEnd: share(alongY, alongZ, x),
    farEnd: share(alongY, alongZ, l - x),
    front: share(alongX, alongZ, y),
    back: share(alongX, alongZ, w - y),
  };
  return { ...faces, sum: Object.values(faces).reduce((sum, f) => sum + f, 0) };
}

export const radiationRunners: Readonly<Record<string, Runner>> = {
  boxViewFactors: (i) => {
    const [l = 0, w = 0, h = 0] = list(i, 'boxM');
    const f = fromFloor(l, w, h);
    return { ...f, exchangeAreaM2: l * w * f.end, exchangeAreaBackM2: w * h * f.endToFloor };
  },
  elementParallel: (i) => ({ share: viewFactorElementParallel(num(i, 'xRatio'), num(i, 'yRatio')) }),
  elementPerpendicular: (i) => ({
    share: viewFactorElementPerpendicular(num(i, 'heightRatio'), num(i, 'distanceRatio')),
  }),
  disks: (i) => ({ share: viewFactorDisks(num(i, 'fromM'), num(i, 'toM'), num(i, 'distanceM')) }),
  pointShares,
  greyParallel: (i) => ({
    flux: greyParallelFluxWPerM2(num(i, 'warmC'), num(i, 'warmEmissivity'), num(i, 'coolC'), num(i, 'coolEmissivity')),
  }),
  planckFraction: (i) => ({ share: blackBodyFractionBelow(num(i, 'wavelengthTempUmK'), 1) }),
  planckBands: (i) => {
    const tempK = num(i, 'tempK');
    return {
      peakUm: peakWavelengthUm(tempK),
      below078: blackBodyFractionBelow(0.78, tempK),
      nearInfrared: blackBodyFractionBetween(0.78, 1.4, tempK),
      below28: blackBodyFractionBelow(2.8, tempK),
      above5: 1 - blackBodyFractionBelow(5, tempK),
    };
  },
  wien: (i) => ({ peakUm: peakWavelengthUm(num(i, 'tempK')) }),
  cone: (i) => ({ irradiance: coneIrradianceWPerM2(num(i, 'radiatedW'), num(i, 'fullAngleDeg'), num(i, 'distanceM')) }),
  emitterBall: (i) => ({
    radiantShare: emitterSplit({
      diameterM: num(i, 'diameterM'),
      emissivity: num(i, 'emissivity'),
      surfaceC: num(i, 'surfaceC'),
      airC: num(i, 'airC'),
      wallsC: num(i, 'wallsC'),
    }).radiantFrac,
  }),
};
