// Ours for the tables about films of air.

import { kelvinFromCelsius, stefanBoltzmannWPerM2K4 } from '../../src/physics/formulas/constants.ts';
import {
  filmStableAlamdariHammond,
  filmUnstableAlamdariHammond,
  filmVerticalAlamdariHammond,
} from '../../src/physics/formulas/convection-alamdari-hammond.ts';
import {
  filmCeilingAwbiHatton,
  filmDrivenWalton,
  filmFloorAwbiHatton,
  filmWallAwbiHatton,
  filmWallKhalifaMarshall,
} from '../../src/physics/formulas/convection-awbi-hatton.ts';
import { type DryAir, dryAir } from '../../src/physics/formulas/dry-air.ts';
import { nusseltCavityIso15099 } from '../../src/physics/formulas/nusselt-cavity-iso15099.ts';
import {
  nusseltCylinderChurchillChu,
  nusseltVerticalPlateChurchillChu,
  nusseltVerticalPlateLaminarChurchillChu,
} from '../../src/physics/formulas/nusselt-churchill-chu.ts';
import { filmWPerM2K, rayleighNumber } from '../../src/physics/formulas/rayleigh.ts';
import { num } from '../inputs.ts';
import type { Inputs, Runner } from '../table.ts';

/** The air of a worked example, with the book's own property values. */
const bookAir = (i: Inputs): DryAir => ({
  densityKgPerM3: Number.NaN,
  conductivityWPerMK: num(i, 'conductivityWPerMK'),
  kinematicViscosityM2PerS: num(i, 'viscosityM2PerS'),
  diffusivityM2PerS: num(i, 'diffusivityM2PerS'),
  prandtl: num(i, 'prandtl'),
  expansionPerK: num(i, 'expansionPerK'),
});

const radiantWPerM2 = (emissivity: number, warmC: number, coolC: number) =>
  emissivity * stefanBoltzmannWPerM2K4 * (kelvinFromCelsius(warmC) ** 4 - kelvinFromCelsius(coolC) ** 4);

export const convectionRunners: Readonly<Record<string, Runner>> = {
  firescreen: (i) => {
    const air = bookAir(i);
    const heightM = num(i, 'heightM');
    const deltaK = num(i, 'surfaceC') - num(i, 'airC');
    const rayleigh = rayleighNumber(air, deltaK, heightM);
    const nusselt = nusseltVerticalPlateChurchillChu(rayleigh, air.prandtl);
    const film = filmWPerM2K(nusselt, air, heightM);
    return { rayleigh, nusselt, film, lossW: film * heightM * num(i, 'widthM') * deltaK };
  },
  steamPipe: (i) => {
    const air = bookAir(i);
    const diameterM = num(i, 'diameterM');
    const deltaK = num(i, 'surfaceC') - num(i, 'airC');
    const nusselt = nusseltCylinderChurchillChu(rayleighNumber(air, deltaK, diameterM), air.prandtl);
    const flux =
      filmWPerM2K(nusselt, air, diameterM) * deltaK +
      radiantWPerM2(num(i, 'emissivity'), num(i, 'surfaceC'), num(i, 'airC'));
    return { lossWPerM: flux * Math.PI * diameterM };
  },
  nusseltPlate: (i) => ({ nusselt: nusseltVerticalPlateChurchillChu(num(i, 'rayleigh'), num(i, 'prandtl')) }),
  nusseltPlateLaminar: (i) => ({
    nusselt: nusseltVerticalPlateLaminarChurchillChu(num(i, 'rayleigh'), num(i, 'prandtl')),
  }),
  nusseltCylinder: (i) => ({ nusselt: nusseltCylinderChurchillChu(num(i, 'rayleigh'), num(i, 'prandtl')) }),
  dryAir: (i) => {
    const air = dryAir(num(i, 'tempC'));
    return {
      density: air.densityKgPerM3,
      conductivity: air.conductivityWPerMK,
      viscosity: air.kinematicViscosityM2PerS,
      prandtl: air.prandtl,
    };
  },
  boxWall: (i) => {
    const air = dryAir(num(i, 'filmC'));
    const heightM = num(i, 'heightM');
    const rayleigh = rayleighNumber(air, num(i, 'deltaK'), heightM);
    const film = (nusselt: number) => filmWPerM2K(nusselt, air, heightM);
    return {
      rayleigh,
      film: film(nusseltVerticalPlateChurchillChu(rayleigh, air.prandtl)),
      laminarFilm: film(nusseltVerticalPlateLaminarChurchillChu(rayleigh, air.prandtl)),
    };
  },
  alamdariHammond: (i) => ({
    vertical: filmVerticalAlamdariHammond(num(i, 'deltaK'), num(i, 'heightM')),
    driven: filmUnstableAlamdariHammond(num(i, 'deltaK'), num(i, 'hydraulicDiameterM')),
    stable: filmStableAlamdariHammond(num(i, 'deltaK'), num(i, 'hydraulicDiameterM')),
  }),
  awbiHatton: (i) => ({
    wall: filmWallAwbiHatton(num(i, 'deltaK'), num(i, 'hydraulicDiameterM')),
    floor: filmFloorAwbiHatton(num(i, 'deltaK'), num(i, 'hydraulicDiameterM')),
    ceiling: filmCeilingAwbiHatton(num(i, 'deltaK'), num(i, 'hydraulicDiameterM')),
    khalifaWall: filmWallKhalifaMarshall(num(i, 'deltaK')),
  }),
  glazingCavity: (i) => {
    const gapM = num(i, 'gapM');
    const rayleigh = rayleighNumber(dryAir(num(i, 'meanC')), num(i, 'deltaK'), gapM);
    return { rayleigh, nusselt: nusseltCavityIso15099(rayleigh, num(i, 'heightM') / gapM) };
  },
  openMat: (i) => ({ surfaceC: matSurfaceC(num(i, 'fluxWPerM2'), num(i, 'roomC'), num(i, 'emissivity')) }),
  warmBed: (i) => {
    const riseK = num(i, 'riseK');
    const surfaceC = num(i, 'airC') + riseK;
    const film = filmUnstableAlamdariHammond(riseK, num(i, 'hydraulicDiameterM'));
    return { film: film + radiantWPerM2(num(i, 'emissivity'), surfaceC, num(i, 'airC')) / riseK };
  },
};

/** Surface temperature at which film and radiation carry the flux away, by halving. */
function matSurfaceC(fluxWPerM2: number, roomC: number, emissivity: number): number {
  let low = roomC;
  let high = roomC + 200;
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    const riseK = middle - roomC;
    const lost = filmDrivenWalton(riseK) * riseK + radiantWPerM2(emissivity, middle, roomC);
    if (lost < fluxWPerM2) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
