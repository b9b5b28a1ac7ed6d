// Water in the air of a box: what bowl, wet substrate and spray give, what fresh air takes, what settles on cold faces.
// Air nodes are linked by the same flows as in the heat network. Leaves out: water stored in wood and deep substrate
// (it shifts the curve by hours, not the mean), and the animal's own loss (about 0.1 g/h, check P-171).
import { factorBandInPlace, solveBandInPlace } from './dense-band.ts';
import { airHeatCapacityJPerKgK, kelvinFromCelsius, stefanBoltzmannWPerM2K4 } from './formulas/constants.ts';
import { dewPointC } from './formulas/dew-point.ts';
import { bowlEvaporation, waterEmissivity } from './formulas/evaporation-bowl.ts';
import { massTransferMPerS } from './formulas/lewis-relation.ts';
import {
  evaporationHeatJPerKg,
  humidityRatio,
  relativeHumidityFrac,
  vapourPressurePaFromRatio,
} from './formulas/moist-air.ts';
import { saturationPressurePa } from './formulas/saturation-pressure.ts';
import { layoutOf } from './kernel/layout.ts';
import { type BoxModel, columnAt } from './model.ts';
import type { BoxState, Network } from './network.ts';

export interface Moisture {
  /** Humidity ratio of each air node [kg/kg]. */
  readonly ratio: Float64Array;
  /** Spray lying on the floor [kg]. */
  readonly filmKg: number;
  readonly bowlKgPerS: number;
  readonly substrateKgPerS: number;
  readonly sprayKgPerS: number;
  readonly condensedKgPerS: number;
  readonly outKgPerS: number;
  readonly storedKg: number;
  /** Latent heat drawn from (negative) or given to (positive) air and surfaces [W]. */
  readonly airW: Float64Array;
  readonly surfaceW: Float64Array;
  /** How much less heat a surface gets for each kelvin it is warmer [W/K], and the temperature at which surfaceW holds
   *  [degC]: a wet face cools itself, and the heat network must know that to stay steady. */
  readonly surfaceSlope: Float64Array;
  readonly atSurfaceC: Float64Array;
  /** What may evaporate from the floor, for what would be if a face were cooler (shade.ts). */
  readonly floor: readonly Exchange[];
  /** What the books miss, over all the water that moves. */
  readonly balanceRelative: number;
  /** Water given plus water brought in with fresh air [kg/s]. */
  readonly movedKgPerS: number;
}

/** Surface resistance of damp substrate [s/m]; van de Griend and Owe at 10 % water (check P-138). */
const dampResistance = 60;
const airDensity = 1.19;
const lewisNumber = 0.86;

export const dryStart = (model: BoxModel, ratio: number): Moisture => ({
  ratio: new Float64Array(model.airVolumeM3.length).fill(ratio),
  filmKg: 0,
  bowlKgPerS: 0,
  substrateKgPerS: 0,
  sprayKgPerS: 0,
  condensedKgPerS: 0,
  outKgPerS: 0,
  storedKg: 0,
  airW: new Float64Array(model.airVolumeM3.length),
  surfaceW: new Float64Array(model.areas.length),
  surfaceSlope: new Float64Array(model.areas.length),
  atSurfaceC: new Float64Array(model.areas.length),
  floor: [],
  balanceRelative: 0,
  movedKgPerS: 0,
});

export interface Exchange {
  readonly node: number;
  /** -1 = bowl, else patch. */
  readonly patch: number;
  /** Mass transfer conductance [kg/s per kg/kg]. */
  readonly g: number;
  readonly saturated: number;
  /** Rate that does not depend on the air [kg/s]. */
  readonly fixedKgPerS: number;
  /** Spray at rest: no more than this falls on the patch [kg/s]. */
  readonly fallsKgPerS?: number;
  readonly kind: 'bowl' | 'substrate' | 'film' | 'wall';
  readonly heatJPerKg: number;
}

/** Rounds of trying which walls are wet. */
const mostPasses = 12;

/** Moisture at rest (dtS = 0) or after an implicit step of dtS seconds.
 *  @param sprayKg water sprayed at the start of the step; at rest: sprayed per second */
export function moistureStep(
  model: BoxModel,
  net: Network,
  state: BoxState,
  before: Moisture,
  roomRatio: number,
  dtS: number,
  sprayKg: number,
): Moisture {
  const filmBefore = before.filmKg + (dtS > 0 ? sprayKg : 0);
  const bowl = bowlIn(model, state, before);
  const candidates = exchanges(model, net, state, bowl, dtS, dtS > 0 ? filmBefore : sprayKg);
  const paths = airPaths(model, net, before, roomRatio, dtS);
  const free = settledWater(model, net, paths, candidates, before.ratio);
  const wantedKg = filmKgPerS(free) * dtS;
  if (dtS === 0 || wantedKg <= filmBefore)
    return tally(model, net, state, before, bowl, free, roomRatio, dtS, dtS > 0 ? filmBefore - wantedKg : 0);
  const settle = (some: readonly Exchange[]) => settledWater(model, net, paths, some, before.ratio);
  const last = lastOfFilm(settle, candidates, free, filmBefore / dtS);
  return tally(model, net, state, before, bowl, last, roomRatio, dtS, 0);
}

/** The air's water in balance with what is wet. */
interface SettledWater {
  readonly candidates: readonly Exchange[];
  readonly wet: readonly Exchange[];
  readonly ratio: Float64Array;
}

/** Which exchanges go on beside air of these ratios: a wall once the air beside it is above its saturation; spray at rest dries
 *  as it falls, or where that is more than a wet floor gives, as a wet floor does. */
function goingOn(candidates: readonly Exchange[], ratio: Float64Array): Exchange[] {
  const list: Exchange[] = [];
  for (const e of candidates) {
    if (e.kind === 'wall' && ratio[e.node]! <= e.saturated) continue;
    const falls = e.fallsKgPerS;
    if (falls === undefined || e.g * (e.saturated - ratio[e.node]!) <= falls) list.push(e);
    else list.push({ ...e, g: 0, fixedKgPerS: falls });
  }
  return list;
}

const areSame = (a: readonly Exchange[], b: readonly Exchange[]): boolean =>
  a.length === b.length && a.every((e, i) => e.patch === b[i]!.patch && e.kind === b[i]!.kind && e.g === b[i]!.g);

/** Which walls are wet is found by trying. */
function settledWater(
  model: BoxModel,
  { airNodes: nodes }: Network,
  paths: { readonly matrix: Float64Array; readonly right: Float64Array },
  candidates: readonly Exchange[],
  ratioBefore: Float64Array,
): SettledWater {
  const { order, halfBand } = layoutOf(model);
  const wide = 2 * halfBand + 1;
  const ratio = new Float64Array(nodes);
  let wet = goingOn(candidates, ratioBefore);
  for (let pass = 0; pass < mostPasses; pass++) {
    const matrix = paths.matrix.slice();
    const right = paths.right.slice();
    for (const e of wet) {
      const at = order[e.node]!;
      matrix[at * wide + halfBand] = matrix[at * wide + halfBand]! + e.g;
      right[at] = right[at]! + e.fixedKgPerS + e.g * e.saturated;
    }
    factorBandInPlace(matrix, nodes, halfBand);
    solveBandInPlace(matrix, nodes, halfBand, right);
    for (let a = 0; a < nodes; a++) ratio[a] = right[order[a]!]!;
    const next = goingOn(candidates, ratio);
    if (areSame(next, wet) || pass === mostPasses - 1) break;
    wet = next;
  }
  return { candidates, wet, ratio };
}

const givenKgPerS = (e: Exchange, ratio: Float64Array): number => e.fixedKgPerS + e.g * (e.saturated - ratio[e.node]!);

/** What the spray on the floor gives, less what settles on it. */
const filmKgPerS = ({ wet, ratio }: SettledWater): number =>
  wet.reduce((sum, e) => (e.kind === 'film' ? sum + givenKgPerS(e, ratio) : sum), 0);

/** Rounds at most in which the last of a film is met to far below a microgram; our choice. */
const lastRounds = 12;
const lastRelative = 1e-12;

/**
 * A film that would give more than lies there is used up within the step: it is taken to wet so small a part of the floor
 * that just this much is given. The part is found by secants of the reciprocals, which are exact for one node; the slope of
 * the latent heat stays with it, so that a hot surface is not cooled by more than its warmth. What is still missed, far
 * below a microgram, is given outright.
 * @param kgPerS what lies there over the step   @returns water in balance that gives just that
 */
function lastOfFilm(
  settle: (some: readonly Exchange[]) => SettledWater,
  candidates: readonly Exchange[],
  free: SettledWater,
  kgPerS: number,
): SettledWater {
  if (kgPerS <= 0) return settle(candidates.filter((e) => e.kind !== 'film'));
  const scaled = (part: number, missedKgPerS = 0) => {
    const all = candidates.reduce((sum, e) => (e.kind === 'film' ? sum + e.g : sum), 0);
    return candidates.map((e) =>
      e.kind === 'film' ? { ...e, g: e.g * part, fixedKgPerS: (missedKgPerS * e.g) / all } : e,
    );
  };
  let before = { x: 1, y: 1 / filmKgPerS(free) };
  let x = 1 / (kgPerS * before.y);
  for (let round = 0; ; round++) {
    const settled = settle(scaled(1 / x));
    const given = filmKgPerS(settled);
    const missed = kgPerS - given;
    if (Math.abs(missed) <= lastRelative * kgPerS || round === lastRounds) return settle(scaled(1 / x, missed));
    const now = { x, y: 1 / given };
    const slope = (now.y - before.y) / (now.x - before.x);
    const next = now.x + (1 / kgPerS - now.y) / slope;
    before = now;
    // a step that leads nowhere, as where walls begin to drip between two rounds, becomes a proportional one
    x = Number.isFinite(next) && next > 1 ? next : (now.x * given) / kgPerS;
  }
}

/** Water that the air carries from node to node and holds, as a band column by column, and what drives it [kg/s]. */
function airPaths(
  model: BoxModel,
  net: Network,
  before: Moisture,
  roomRatio: number,
  dtS: number,
): { readonly matrix: Float64Array; readonly right: Float64Array } {
  const nodes = net.airNodes;
  const cp = airHeatCapacityJPerKgK;
  const { order, halfBand } = layoutOf(model);
  const wide = 2 * halfBand + 1;
  const matrix = new Float64Array(nodes * wide);
  const right = new Float64Array(nodes);
  for (let a = 0; a < nodes; a++) {
    const row = order[a]! * wide;
    // a sealed box still needs a finite answer: the diffusive link of joints, 1e-9 kg/s
    const toRoom = net.airToRoom[a]! / cp + 1e-9;
    const held = dtS > 0 ? (model.airVolumeM3[a]! * airDensity) / dtS : 0;
    let given = 0;
    for (let k = 0; k < wide; k++) {
      if (k === halfBand) continue;
      const m = net.air[row + k]! / cp;
      matrix[row + k] = m;
      given -= m;
    }
    matrix[row + halfBand] = given + toRoom + held;
    right[order[a]!] = toRoom * roomRatio + held * before.ratio[a]!;
  }
  return { matrix, right };
}

/** The bowl at its own balance: where its water stands, and what it draws from the air and from the faces that it sees [W]. */
interface Bowl {
  readonly node: number;
  readonly g: number;
  readonly waterC: number;
  readonly airW: number;
  /** From a face of 1 m2 for each K^4 that it is above the water [W]. */
  readonly perFaceW: number;
}

function bowlIn({ enclosure, grid, areas, parameters }: BoxModel, state: BoxState, before: Moisture): Bowl | null {
  if (!enclosure.bowl) return null;
  const { diameterM, xM } = enclosure.bowl;
  const node = columnAt(grid, xM);
  const airC = state.airC[node]!;
  const { filmWPerM2K, waterC, massTransferMPerS } = bowlEvaporation({
    diameterM,
    airC,
    rhFrac: Math.min(1, relativeHumidityFrac(airC, vapourPressurePaFromRatio(before.ratio[node]!))),
    surroundingsC: seenByBowlC(areas, state.surfaceC),
  });
  const areaM2 = ((Math.PI * diameterM ** 2) / 4) * parameters.evaporation;
  const faces = areas.reduce((sum, a) => sum + a, 0);
  return {
    node,
    g: massTransferMPerS * airDensity * areaM2,
    waterC,
    airW: areaM2 * filmWPerM2K * (airC - waterC),
    perFaceW: (areaM2 * waterEmissivity * stefanBoltzmannWPerM2K4) / faces,
  };
}

/** What a wet face gives for each kg/kg that it is above its air [kg/m2s]; the film is never counted below that of still air. */
const wetKgPerM2S = (film: number): number =>
  massTransferMPerS(Math.max(film, 0.5), airDensity, lewisNumber) * airDensity;

/** The same of damp substrate, through its dry top layer. */
function dampKgPerM2S(film: number): number {
  const perM2 = wetKgPerM2S(film) / airDensity;
  return (perM2 / (1 + perM2 * dampResistance)) * airDensity;
}

/** Heat that evaporation would take from a face if it had another temperature, and with it another film [W].
 *  @param atFilm film for which the exchange was worked out [W/m2K]   @param film the other one */
export function evaporationWAt(e: Exchange, ratio: number, tempC: number, atFilm: number, film: number): number {
  const law = e.kind === 'film' ? wetKgPerM2S : dampKgPerM2S;
  const kgPerS = ((e.g * law(film)) / law(atFilm)) * (saturatedRatio(tempC) - ratio);
  return e.heatJPerKg * Math.min(kgPerS, e.fallsKgPerS ?? kgPerS);
}

/** Fourth-power mean of all faces [degC]. */
function seenByBowlC(areas: Float64Array, surfaceC: Float64Array): number {
  let k4 = 0;
  let area = 0;
  for (let s = 0; s < areas.length; s++) {
    k4 += areas[s]! * kelvinFromCelsius(surfaceC[s]!) ** 4;
    area += areas[s]!;
  }
  return Math.sqrt(Math.sqrt(k4 / area)) - kelvinFromCelsius(0);
}

function exchanges(
  model: BoxModel,
  net: Network,
  state: BoxState,
  bowl: Bowl | null,
  dtS: number,
  water: number,
): Exchange[] {
  const { enclosure, grid, parameters } = model;
  const list: Exchange[] = [];
  const heat = evaporationHeatJPerKg(25);
  if (bowl) {
    const { node, g, waterC } = bowl;
    // its heat is that of its own balance
    list.push({ node, patch: -1, kind: 'bowl', g, saturated: saturatedRatio(waterC), fixedKgPerS: 0, heatJPerKg: 0 });
  }
  const floorArea = enclosure.box.lengthM * enclosure.box.depthM;
  const wetFrac = enclosure.substrate?.wetFrac ?? 0;
  grid.patches.forEach((p, s) => {
    if (p.role === 'mesh') return;
    const node = p.layer * grid.columns + p.column;
    const saturated = saturatedRatio(state.surfaceC[s]!);
    const k = wetKgPerM2S(net.film[s]!) * p.areaM2;
    if (p.facing === 'floor') {
      if (wetFrac > 0) {
        const damp = dampKgPerM2S(net.film[s]!) * p.areaM2 * wetFrac * parameters.evaporation;
        list.push({ node, patch: s, kind: 'substrate', g: damp, saturated, fixedKgPerS: 0, heatJPerKg: heat });
      }
      if (water <= 1e-9) return;
      const film = { node, patch: s, kind: 'film', g: k, saturated, fixedKgPerS: 0, heatJPerKg: heat } as const;
      list.push(dtS > 0 ? film : { ...film, fallsKgPerS: (water * p.areaM2) / floorArea });
    } else list.push({ node, patch: s, kind: 'wall', g: k, saturated, fixedKgPerS: 0, heatJPerKg: heat });
  });
  return list;
}

export const saturatedRatio = (tempC: number): number =>
  humidityRatio(saturationPressurePa(Math.max(-40, Math.min(followedToC, tempC))));

/** Water on a face is followed up to here; hotter faces are dry in truth. */
const followedToC = 90;

/** Change of the saturated humidity ratio with temperature [1/K]. Above what saturatedRatio follows: the line on which a
 *  face that cools stops giving water at the dew point of its air, so that drying never cools it further. */
function saturatedSlope(tempC: number, saturated: number, ratio: number): number {
  if (tempC < followedToC - 0.5) return saturatedRatio(tempC + 0.5) - saturatedRatio(tempC - 0.5);
  const dryAtC = dewPointC(vapourPressurePaFromRatio(Math.max(1e-5, ratio)));
  return Math.max(0, saturated - ratio) / Math.max(1, tempC - dryAtC);
}

/** Latent heat that air and surfaces get in a state [W]; negative where water evaporates. */
export function latentW(moisture: Moisture, state: BoxState): number {
  let w = 0;
  for (const a of moisture.airW) w += a;
  for (let s = 0; s < moisture.surfaceW.length; s++)
    w += moisture.surfaceW[s]! - moisture.surfaceSlope[s]! * (state.surfaceC[s]! - moisture.atSurfaceC[s]!);
  return w;
}

/** Part of the way from one answer to another; both close their books, so the mixture does. The slopes of the newer one
 *  stay, its surface heat moved to the same temperatures. */
export function partWay(from: Moisture, to: Moisture, part: number): Moisture {
  const mix = (a: number, b: number) => a + part * (b - a);
  const mixed = (a: Float64Array, b: Float64Array) => b.map((v, i) => mix(a[i]!, v));
  const moved = from.surfaceW.map((w, s) => w - from.surfaceSlope[s]! * (to.atSurfaceC[s]! - from.atSurfaceC[s]!));
  return {
    ...to,
    ratio: mixed(from.ratio, to.ratio),
    bowlKgPerS: mix(from.bowlKgPerS, to.bowlKgPerS),
    substrateKgPerS: mix(from.substrateKgPerS, to.substrateKgPerS),
    sprayKgPerS: mix(from.sprayKgPerS, to.sprayKgPerS),
    condensedKgPerS: mix(from.condensedKgPerS, to.condensedKgPerS),
    outKgPerS: mix(from.outKgPerS, to.outKgPerS),
    storedKg: mix(from.storedKg, to.storedKg),
    airW: mixed(from.airW, to.airW),
    surfaceW: mixed(moved, to.surfaceW),
  };
}

/** Let wet faces cool themselves in the heat network; to be called once on a fresh network before it is factored. */
export function addLatentSlopes(net: Network, moisture: Moisture): void {
  for (let s = 0; s < moisture.surfaceSlope.length; s++) net.own[s] = net.own[s]! + moisture.surfaceSlope[s]!;
}

function tally(
  model: BoxModel,
  net: Network,
  state: BoxState,
  before: Moisture,
  bowl: Bowl | null,
  { candidates, wet, ratio }: SettledWater,
  roomRatio: number,
  dtS: number,
  filmKg: number,
): Moisture {
  const airW = new Float64Array(net.airNodes);
  const surfaceW = new Float64Array(model.areas.length);
  const surfaceSlope = new Float64Array(model.areas.length);
  const sums = { bowl: 0, substrate: 0, film: 0, wall: 0 };
  for (const e of wet) {
    const kgPerS = givenKgPerS(e, ratio);
    sums[e.kind] += kgPerS;
    if (e.patch < 0) continue;
    surfaceW[e.patch] = surfaceW[e.patch]! - kgPerS * e.heatJPerKg;
    surfaceSlope[e.patch] =
      surfaceSlope[e.patch]! +
      e.g * e.heatJPerKg * saturatedSlope(state.surfaceC[e.patch]!, e.saturated, ratio[e.node]!);
  }
  if (bowl) {
    airW[bowl.node] = airW[bowl.node]! - bowl.airW;
    const water4 = kelvinFromCelsius(bowl.waterC) ** 4;
    for (let s = 0; s < surfaceW.length; s++)
      surfaceW[s] =
        surfaceW[s]! - bowl.perFaceW * model.areas[s]! * (kelvinFromCelsius(state.surfaceC[s]!) ** 4 - water4);
  }
  let out = 0;
  let stored = 0;
  for (let a = 0; a < net.airNodes; a++) {
    stored += model.airVolumeM3[a]! * airDensity * ratio[a]!;
    out += 1e-9 * (ratio[a]! - roomRatio);
    out += net.ventilation.exchangeKgPerS[a]! * (ratio[a]! - roomRatio);
  }
  for (const s of net.ventilation.streams) if (s.to < 0) out += s.kgPerS * (ratio[s.from]! - roomRatio);
  const storedBefore = before.ratio.reduce((sum, w, a) => sum + model.airVolumeM3[a]! * airDensity * w, 0);
  const change = dtS > 0 ? (stored - storedBefore) / dtS : 0;
  const sources = sums.bowl + sums.substrate + sums.film;
  const miss = sources + sums.wall - out - change;
  return {
    ratio,
    filmKg,
    bowlKgPerS: sums.bowl,
    substrateKgPerS: sums.substrate,
    sprayKgPerS: sums.film,
    condensedKgPerS: Math.max(0, -sums.wall),
    outKgPerS: out,
    storedKg: stored,
    airW,
    surfaceW,
    surfaceSlope,
    atSurfaceC: state.surfaceC.slice(),
    floor: candidates.filter((e) => e.kind === 'substrate' || e.kind === 'film'),
    balanceRelative: miss / Math.max(1e-9, Math.abs(sources) + net.ventilation.freshKgPerS * roomRatio),
    movedKgPerS: Math.abs(sources) + net.ventilation.freshKgPerS * roomRatio,
  };
}
