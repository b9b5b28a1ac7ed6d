// What a resting snake would come to at each place (operative temperature): belly on the floor, back to air and walls,
// heaters shining on it. As readings, so that it costs one pass over the weights.
// Leaves out coiling, wet skin and behaviour; a stretched body, as in formulas/snake-body.ts (BAKKEN1992 for the idea).
import type { PlaceId } from './answer.ts';
import type { Enclosure } from './enclosure.ts';
import { operativeTempOnFloor, snakeFilm } from './formulas/snake-body.ts';
import type { Grid } from './grid.ts';
import { usualMesh } from './mesh-lid.ts';
import type { HeaterPath } from './model.ts';
import { irradiancePerW } from './pattern.ts';
import { addAir, addPatches, addSeen, emptyReading, insidePoint, type Reading } from './reading.ts';

/** Body used when the file names no animal: 0.5 kg, 1 m; our choice. */
const usualBody = { massKg: 0.5, lengthM: 1 } as const;
/** Mass of a snake of a length when it was not weighed [kg]: 0.5 kg at 1 m, growing with the cube; our choice. */
const massFor = (lengthM: number): number => usualBody.massKg * lengthM ** 3;
/** Half length of floor that a resting animal is taken to lie on [m]; our choice. */
const halfM = 0.1;

interface Parts {
  readonly enclosure: Enclosure;
  readonly grid: Grid;
  readonly heaters: readonly HeaterPath[];
}

/** Operative temperature for a body lying at x on the floor, in the middle of the depth.
 *  @param sheltered under a roof that keeps direct radiation off */
export function operativeReading(parts: Parts, xM: number, sheltered: boolean): Reading {
  const { enclosure, grid, heaters } = parts;
  const animal = enclosure.animal;
  const lengthM = animal?.totalLengthM ?? usualBody.lengthM;
  const massKg = animal?.massG ? animal.massG / 1000 : massFor(lengthM);
  const { floorWPerK, airWPerK } = operativeTempOnFloor(massKg, lengthM, 28, 26);
  const film = snakeFilm(massKg, lengthM, 26, 4);
  const floorShare = floorWPerK / (floorWPerK + airWPerK);
  const filmSum = film.convectionWPerM2K + film.radiationWPerM2K;
  const airShare = ((1 - floorShare) * film.convectionWPerM2K) / filmSum;
  const at = insidePoint(enclosure, { xM, yM: enclosure.box.depthM / 2, zM: 0.02 });
  const r = emptyReading(grid, heaters.length);
  const L = enclosure.box.lengthM;
  addPatches(r, grid, Math.max(0, xM - halfM), Math.min(L, xM + halfM), floorShare, (p) => p.facing === 'floor');
  addAir(r, grid, xM, at.zM, airShare);
  addSeen(r, grid, at, 1 - floorShare - airShare);
  if (sheltered) return r;
  heaters.forEach((path, h) => {
    if (path.body.form !== 'body') return;
    const open = path.outside ? (enclosure.box.panels.top.meshOpenFrac ?? usualMesh.openFrac) : 1;
    // projected share of a lying cylinder's surface: diameter over circumference
    const perW = (0.9 * open * irradiancePerW(path.at, at, path.pattern)) / Math.PI / filmSum;
    r.perRadiatedW[h] = r.perRadiatedW[h]! + (1 - floorShare) * perW * (path.outside ? 0.5 : 1);
    r.perShortWaveW[h] = r.perShortWaveW[h]! + (1 - floorShare) * perW;
  });
  return r;
}

/** Places at which the operative temperature is told, with their x and whether a roof shelters them. */
export function operativeReadings(
  parts: Parts,
  places: readonly { readonly place: PlaceId; readonly xM: number; readonly sheltered: boolean }[],
): readonly { readonly place: PlaceId; readonly reading: Reading }[] {
  return places.map(({ place, xM, sheltered }) => ({ place, reading: operativeReading(parts, xM, sheltered) }));
}
