// How much heat passes a wall, and a whole box, per kelvin, and how much heat do they store? Plane layers, steady,
// no corners, no air exchange.

export interface WallLayer {
  readonly thicknessM: number;
  readonly conductivityWPerMK: number;
}

/** Heat through a layered wall. @param layers any order @param surfaceM2KPerW resistances of both faces [m²K/W]
 *  @returns [W/m²K]. Source: ISO6946 cl. 6. Checks: P-010..P-016. */
export function uValueWPerM2K(layers: readonly WallLayer[], surfaceM2KPerW: readonly [number, number]): number {
  const body = layers.reduce((sum, layer) => sum + layer.thicknessM / layer.conductivityWPerMK, 0);
  return 1 / (surfaceM2KPerW[0] + body + surfaceM2KPerW[1]);
}

export interface BoxFace {
  readonly areaM2: number;
  readonly uWPerM2K: number;
}

/** Heat lost by a whole box per kelvin of even inside air. @param faces all six @returns [W/K].
 *  Source: ISO6946 method. Checks: P-017, P-201, P-211. */
export const boxConductanceWPerK = (faces: readonly BoxFace[]): number =>
  faces.reduce((sum, face) => sum + face.areaM2 * face.uWPerM2K, 0);

export interface StoringBody {
  readonly volumeM3: number;
  readonly densityKgPerM3: number;
  readonly heatCapacityJPerKgK: number;
}

/** Heat stored per kelvin if all of it warms alike. @returns [J/K]. Definition. Checks: P-019. */
export const heatCapacityJPerK = (bodies: readonly StoringBody[]): number =>
  bodies.reduce((sum, body) => sum + body.volumeM3 * body.densityKgPerM3 * body.heatCapacityJPerKgK, 0);
