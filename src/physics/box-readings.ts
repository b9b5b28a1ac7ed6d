// The readings of one box: each thermostat's probe, the basking surface, air at both ends, hides, perch.
// basking-surface: floor within 0.1 m either side of the heater (of a mat: its whole cover). What the roof of a hide keeps off
// its floor is taken off in places.ts. The weights of a probe fixed to a wall are our choice.
import type { PlaceId } from './answer.ts';
import type { Enclosure } from './enclosure.ts';
import { baskingStrip, endShareFrac, type Grid, mainHeater, warmEndOf } from './grid.ts';
import { usualMesh } from './mesh-lid.ts';
import type { HeaterPath } from './model.ts';
import { operativeReadings } from './operative.ts';
import type { Parameters } from './parameters.ts';
import { irradiancePerW } from './pattern.ts';
import { addAir, addPatches, addSeen, between, emptyReading, insidePoint, type Reading } from './reading.ts';
import type { Point } from './rectangle.ts';

export interface BoxReadings {
  readonly probes: readonly Reading[];
  readonly basking: Reading;
  readonly warmAir: Reading;
  readonly coolAir: Reading;
  readonly coolFloor: Reading;
  readonly warmHide: Reading | null;
  readonly coolHide: Reading | null;
  readonly perch: Reading | null;
  /** What a resting snake would come to at the places where it lies. */
  readonly operative: readonly { readonly place: PlaceId; readonly reading: Reading }[];
}

interface Parts {
  readonly enclosure: Enclosure;
  readonly grid: Grid;
  readonly parameters: Parameters;
  readonly heaters: readonly HeaterPath[];
  readonly sourceNodes: readonly number[];
  readonly areas: Float64Array;
}

/** Height at which the air that an animal lives in is read [m]; our choice. */
export const animalAirHeightM = 0.05;
/** Film of a small body in still air, convection and radiation together [W/m2K]; manikin values 4.0 to 5.4 plus 3.1 to 4.9 (check P-219). */
const smallBodyFilm = 10;

export function readingsOf(parts: Parts): BoxReadings {
  const { enclosure, grid } = parts;
  const L = enclosure.box.lengthM;
  const end = warmEndOf(enclosure);
  const span = endShareFrac * L;
  const warmX = end === 'left' ? span / 2 : L - span / 2;
  const z = Math.min(animalAirHeightM, enclosure.box.heightM / 4);
  const airAtX = (x: number) => filled(parts, (r) => addAir(r, grid, x, z, 1));
  const coolX = L - warmX;
  return {
    probes: enclosure.thermostats.map((_, t) => probe(parts, t)),
    basking: basking(parts),
    warmAir: airAtX(warmX),
    coolAir: airAtX(coolX),
    coolFloor: filled(parts, (r) =>
      addPatches(r, grid, Math.max(0, coolX - span / 2), Math.min(L, coolX + span / 2), 1, isFloor),
    ),
    warmHide: hide(parts, true),
    coolHide: hide(parts, false),
    perch: enclosure.perch ? perch(parts, enclosure.perch) : null,
    operative: operativeReadings(parts, lyingPlaces(enclosure, warmX)),
  };
}

/** Where an animal lies: the basking strip, both ends of the floor, and in each end's hide. */
function lyingPlaces(enclosure: Enclosure, warmX: number) {
  const L = enclosure.box.lengthM;
  const main = mainHeater(enclosure);
  const strip = main < 0 ? [0, L / 4] : baskingStrip(enclosure, enclosure.heaters[main]!);
  const list: { place: PlaceId; xM: number; sheltered: boolean }[] = [
    { place: 'basking-surface', xM: (strip[0]! + strip[1]!) / 2, sheltered: false },
    { place: 'warm-air', xM: warmX, sheltered: false },
    { place: 'cool-floor', xM: L - warmX, sheltered: false },
  ];
  const warm = hideOf(enclosure, true);
  const cool = hideOf(enclosure, false);
  if (warm) list.push({ place: 'warm-hide', xM: warm.xM, sheltered: true });
  if (cool) list.push({ place: 'cool-hide', xM: cool.xM, sheltered: true });
  return list;
}

/** The hide of one end that lies furthest out. */
function hideOf(enclosure: Enclosure, warm: boolean) {
  const L = enclosure.box.lengthM;
  const warmLeft = warmEndOf(enclosure) === 'left';
  const hides = enclosure.hides.filter((h) => h.xM <= L / 2 === (warmLeft === warm));
  if (hides.length === 0) return undefined;
  return hides.reduce((a, b) => (Math.abs(a.xM - L / 2) > Math.abs(b.xM - L / 2) ? a : b));
}

const isFloor = (p: { readonly facing: string }): boolean => p.facing === 'floor';

function filled(parts: Parts, fill: (r: Reading) => void): Reading {
  const r = emptyReading(parts.grid, parts.heaters.length);
  fill(r);
  return r;
}

function probe(parts: Parts, t: number): Reading {
  const { enclosure, grid, parameters } = parts;
  const thermostat = enclosure.thermostats[t]!;
  const at = thermostat.probe;
  if (at.at === 'mat') return matReading(parts, thermostat.id, at.xM);
  const inside = insidePoint(enclosure, at);
  const freeShare = at.at === 'floor' ? 0.3 : at.at === 'wall' ? 1 - parameters.probeWallFrac : 1;
  return filled(parts, (r) => {
    const seen = parameters.probeRadiantFrac;
    addAir(r, grid, at.xM, at.zM, freeShare * (1 - seen));
    addSeen(r, grid, inside, freeShare * seen);
    addDirect(parts, r, inside, freeShare);
    if (at.at === 'floor') addPatches(r, grid, at.xM - 0.03, at.xM + 0.03, 0.7, isFloor);
    if (at.at === 'wall') addWall(parts, r, at, parameters.probeWallFrac);
  });
}

/** The mat that this thermostat drives, at the mat itself; the floor at the probe when it drives none. */
function matReading(parts: Parts, thermostatId: string, xM: number): Reading {
  const { grid, enclosure, areas } = parts;
  const mine = grid.patches
    .map((p, patch) => ({
      patch,
      area: p.role === 'mat' && enclosure.heaters[p.heater]!.thermostatId === thermostatId ? areas[patch]! : 0,
    }))
    .filter((m) => m.area > 0);
  const total = mine.reduce((s, m) => s + m.area, 0);
  const r = emptyReading(grid, parts.heaters.length);
  if (mine.length === 0) addPatches(r, grid, xM - 0.03, xM + 0.03, 1, isFloor);
  for (const m of mine) {
    const node = parts.sourceNodes[m.patch]!;
    if (node <= 0) r.surface[m.patch] = m.area / total;
    else r.behind.push({ patch: m.patch, node: node - 1, weight: m.area / total });
  }
  return r;
}

/** Direct radiation on a small body: irradiance x 0.9 x (cross-section over surface, 1/4) / film. */
function addDirect(parts: Parts, r: Reading, at: Point, weight: number): void {
  const meshOpen = parts.enclosure.box.panels.top.meshOpenFrac ?? usualMesh.openFrac;
  parts.heaters.forEach((path, h) => {
    if (path.body.form !== 'body') return;
    const k = (0.9 * (path.outside ? meshOpen : 1) * irradiancePerW(path.at, at, path.pattern)) / 4 / smallBodyFilm;
    r.perRadiatedW[h] = r.perRadiatedW[h]! + weight * k * (path.outside ? 0.5 : 1);
    r.perShortWaveW[h] = r.perShortWaveW[h]! + weight * k;
  });
}

/** The nearest wall at the probe's column and layer. */
function addWall(parts: Parts, r: Reading, at: Point, weight: number): void {
  const { enclosure, grid } = parts;
  const gaps = { left: at.xM, right: enclosure.box.lengthM - at.xM, front: at.yM, back: enclosure.box.depthM - at.yM };
  const panel = (Object.keys(gaps) as (keyof typeof gaps)[]).reduce((a, b) => (gaps[b] < gaps[a] ? b : a));
  const layer = Math.min(grid.layers - 1, Math.floor((at.zM / enclosure.box.heightM) * grid.layers));
  if (panel === 'left' || panel === 'right') {
    addPatches(r, grid, 0, 0, weight, (p) => p.panel === panel && p.layer === layer);
    return;
  }
  for (const [i, w] of between(grid.columnXM, at.xM, false))
    addPatches(
      r,
      grid,
      grid.edgeM[i]!,
      grid.edgeM[i + 1]!,
      weight * w,
      (p) => p.panel === panel && p.layer === layer && p.column === i,
    );
}

function basking(parts: Parts): Reading {
  const { enclosure, grid, areas } = parts;
  const L = enclosure.box.lengthM;
  const main = mainHeater(enclosure);
  if (main < 0) return filled(parts, (r) => addPatches(r, grid, 0, L / 4, 1, isFloor));
  const h = enclosure.heaters[main]!;
  if (h.kind === 'heat-mat') {
    const r = emptyReading(grid, parts.heaters.length);
    let total = 0;
    grid.patches.forEach((p, s) => {
      if (p.heater === main) total += areas[s]!;
    });
    grid.patches.forEach((p, s) => {
      if (p.heater === main) r.surface[s] = areas[s]! / total;
    });
    return r;
  }
  const [from, to] = baskingStrip(enclosure, h);
  return filled(parts, (r) => addPatches(r, grid, from, to, 1, isFloor));
}

/** Inside a hide: half floor, half the air beside it; our choice. */
function hide(parts: Parts, warm: boolean): Reading | null {
  const { enclosure, grid, heaters } = parts;
  const L = enclosure.box.lengthM;
  const one = hideOf(enclosure, warm);
  if (!one) return null;
  const r = emptyReading(grid, heaters.length);
  addPatches(
    r,
    grid,
    Math.max(0, one.xM - one.lengthM / 2),
    Math.min(L, one.xM + one.lengthM / 2),
    0.5,
    (p) => isFloor(p) && p.role !== 'spot',
  );
  addAir(r, grid, one.xM, Math.min(animalAirHeightM, enclosure.box.heightM / 4), 0.5);
  return r;
}

function perch(parts: Parts, at: Point): Reading {
  const inside = insidePoint(parts.enclosure, at);
  return filled(parts, (r) => {
    addAir(r, parts.grid, inside.xM, inside.zM, 0.5);
    addSeen(r, parts.grid, inside, 0.5);
    addDirect(parts, r, inside, 1);
  });
}
