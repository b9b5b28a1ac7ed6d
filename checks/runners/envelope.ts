// Ours for the tables about walls and whole boxes.
import { blackBodyCoefficientWPerM2K } from '../../src/physics/formulas/black-body-coefficient.ts';
import { insideResistanceM2KPerW, surfaceResistanceM2KPerW } from '../../src/physics/formulas/surface-resistance.ts';
import { boxConductanceWPerK, heatCapacityJPerK, uValueWPerM2K } from '../../src/physics/formulas/u-value.ts';
import { grid, list, num } from '../inputs.ts';
import type { Inputs, Runner } from '../table.ts';

const layersOf = (inputs: Inputs, key: string) =>
  grid(inputs, key).map(([thicknessM = 0, conductivityWPerMK = 0]) => ({ thicknessM, conductivityWPerMK }));

const { up, horizontal, down } = insideResistanceM2KPerW;

function woodenBoxUa(inputs: Inputs): number {
  const [length = 0, width = 0, height = 0] = list(inputs, 'insideM');
  const wood = layersOf(inputs, 'wood');
  const glass = layersOf(inputs, 'glass');
  const wall = (layers: typeof wood, areaM2: number, rs: number) => ({
    areaM2,
    uWPerM2K: uValueWPerM2K(layers, [rs, rs]),
  });
  return boxConductanceWPerK([
    wall(wood, length * width, up),
    wall(wood, length * width, down),
    wall(wood, length * height, horizontal),
    wall(wood, 2 * width * height, horizontal),
    wall(glass, length * height, horizontal),
  ]);
}

function woodenBoxCapacity(inputs: Inputs): number {
  const [length = 0, width = 0, height = 0] = list(inputs, 'insideM');
  const woodM2 = 2 * length * width + length * height + 2 * width * height;
  const body = (volumeM3: number, densityKgPerM3: number, heatCapacityJPerKgK: number) => ({
    volumeM3,
    densityKgPerM3,
    heatCapacityJPerKgK,
  });
  return heatCapacityJPerK([
    body(woodM2 * num(inputs, 'woodM'), 600, 1700),
    body(length * height * num(inputs, 'glassM'), 2500, 750),
    body(length * width * height, 1.2, 1006),
  ]);
}

/** Foam box of catalogue outside size, wall area taken half-way through the wall. */
function foamBoxUa(inputs: Inputs): number {
  const thick = num(inputs, 'thicknessM');
  const [a = 0, b = 0, c = 0] = list(inputs, 'outsideM').map((side) => side - thick);
  const layers = [{ thicknessM: thick, conductivityWPerMK: num(inputs, 'conductivityWPerMK') }];
  const areaM2 = 2 * (a * b + a * c + b * c);
  return boxConductanceWPerK([{ areaM2, uWPerM2K: uValueWPerM2K(layers, [horizontal, horizontal]) }]);
}

export const envelopeRunners: Readonly<Record<string, Runner>> = {
  blackBodyCoefficient: (i) => ({ value: blackBodyCoefficientWPerM2K(num(i, 'meanC')) }),
  surfaceResistance: (i) => ({
    value: surfaceResistanceM2KPerW(num(i, 'convectionWPerM2K'), num(i, 'emissivity'), num(i, 'meanC')),
  }),
  uValue: (i) => ({
    value: uValueWPerM2K(layersOf(i, 'layers'), [num(i, 'surfaceM2KPerW'), num(i, 'surfaceM2KPerW')]),
  }),
  woodenBoxUa: (i) => ({ value: woodenBoxUa(i) }),
  woodenBoxCapacity: (i) => ({ value: woodenBoxCapacity(i) }),
  foamBoxUa: (i) => ({ value: foamBoxUa(i) }),
  hiveUa: (i) => {
    const wallU = uValueWPerM2K(layersOf(i, 'wall'), [horizontal, horizontal]);
    const topU = uValueWPerM2K(layersOf(i, 'quilt'), [up, up]);
    return {
      value: boxConductanceWPerK([
        { areaM2: num(i, 'wallM2'), uWPerM2K: wallU },
        { areaM2: num(i, 'topM2'), uWPerM2K: topU },
      ]),
    };
  },
};
