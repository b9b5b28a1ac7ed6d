// How does a snake's body take up heat: how fast, and what temperature does it come to on a warm floor under cooler air?
// A stretched cylinder in still air. Leaves out coiling (exposed area 40 to 60 %, so about twice the time), blood flow
// (live reptiles warm faster than they cool) and behaviour. Geometry only: not checked against measured snakes.
import { blackBodyCoefficientWPerM2K } from './black-body-coefficient.ts';
import { dryAir } from './dry-air.ts';
import { biotNumber } from './lumped-body.ts';
import { nusseltCylinderChurchillChu } from './nusselt-churchill-chu.ts';
import { filmWPerM2K, rayleighNumber } from './rayleigh.ts';

/** Body of a snake. Source: SNAKETISSUE (memory); emissivity INCROPERA tab. A.11 (memory). */
export const snakeTissue = {
  densityKgPerM3: 1000,
  heatCapacityJPerKgK: 3500,
  conductivityWPerMK: 0.5,
  emissivity: 0.95,
} as const;

export interface SnakeFilm {
  readonly diameterM: number;
  readonly convectionWPerM2K: number;
  readonly radiationWPerM2K: number;
  readonly timeConstantS: number;
  readonly biot: number;
}

/** Diameter of a cylinder of the animal's mass and length. @param massKg [kg] @param lengthM [m] @returns [m]. Geometry. Checks: P-160..P-165. */
export const snakeDiameterM = (massKg: number, lengthM: number): number =>
  Math.sqrt((4 * massKg) / (Math.PI * snakeTissue.densityKgPerM3 * lengthM));

/** Films and time constant of a stretched snake in still air. @param massKg [kg] @param lengthM [m] @param airC [°C]
 *  @param deltaK body minus air, for the film [K]. Source: CHURCHILL1975B, own combination. Checks: P-160..P-165, P-174. */
export function snakeFilm(massKg: number, lengthM: number, airC: number, deltaK: number): SnakeFilm {
  const diameterM = snakeDiameterM(massKg, lengthM);
  const air = dryAir(airC);
  const nusselt = nusseltCylinderChurchillChu(rayleighNumber(air, deltaK, diameterM), air.prandtl);
  const convectionWPerM2K = filmWPerM2K(nusselt, air, diameterM);
  const radiationWPerM2K = snakeTissue.emissivity * blackBodyCoefficientWPerM2K(airC);
  const film = convectionWPerM2K + radiationWPerM2K;
  return {
    diameterM,
    convectionWPerM2K,
    radiationWPerM2K,
    timeConstantS: (snakeTissue.densityKgPerM3 * snakeTissue.heatCapacityJPerKgK * diameterM) / (4 * film),
    biot: biotNumber(film, diameterM / 4, snakeTissue.conductivityWPerMK),
  };
}

/** Share of the diameter that rests on the floor [-]: our choice. */
export const bellyContactFrac = 0.3;

/** Temperature a resting snake comes to between a warm floor and the air, with both conductances.
 *  @param massKg [kg] @param lengthM [m] @param floorC [°C] @param airC air and walls [°C] @param deltaK for the film [K]
 *  Source: BAKKEN1992 for the idea; strip and tissue path (a quarter of the diameter) are our choice. Checks: P-166. */
export function operativeTempOnFloor(massKg: number, lengthM: number, floorC: number, airC: number, deltaK = 4) {
  const film = snakeFilm(massKg, lengthM, airC, deltaK);
  const stripM2 = bellyContactFrac * film.diameterM * lengthM;
  const floorWPerK = (snakeTissue.conductivityWPerMK * stripM2) / (film.diameterM / 4);
  const airWPerK = (film.convectionWPerM2K + film.radiationWPerM2K) * (Math.PI * film.diameterM * lengthM - stripM2);
  return { floorWPerK, airWPerK, tempC: (floorWPerK * floorC + airWPerK * airC) / (floorWPerK + airWPerK) };
}
