// How much cooler would a face of the floor be if a roof kept off what the heaters send it? From the face's own balance, with
// film, long wave, evaporation and panel as the box has them and all that it exchanges with held where it is.
// Leaves out: the roof's own warmth, sun that it keeps off, and the hours that a floor takes to cool.
import { layoutOf } from './kernel/layout.ts';
import type { BoxModel } from './model.ts';
import { type Exchange, evaporationWAt, type Moisture } from './moisture.ts';
import { type BoxState, insideFilm, type Network } from './network.ts';
import type { HeaterNow } from './places.ts';
import type { Moment } from './run.ts';

const sigma = 5.670374419e-8;
/** How the layout counts a face that looks up. */
const floor = 0;

/** A box at one moment, with what its faces exchange. */
export interface ShownBox {
  readonly state: BoxState;
  readonly net: Network;
  readonly moisture: Moisture;
  readonly now: readonly HeaterNow[];
}

/** A moment of a run as its box is shown. */
export const shownAt = ({ state, net, now }: Moment): ShownBox => ({
  state: state.box,
  net,
  moisture: state.moisture,
  now,
});

/** Fall of a floor face without the radiation of heaters that hang [K]. @param s patch of the floor
 *  Source: own balance of the face. Checks: unit (a box whose heaters send it nothing; laws of warmth). */
export function shadeFallK(model: BoxModel, box: ShownBox, s: number): number {
  const sentW = sentByHeatersW(model, box.now, s);
  if (sentW === 0) return 0;
  const face = faceOf(model, box, s);
  return fallFor((fallK) => face(0) - face(fallK), sentW, sentW / (usualWPerM2K * model.areas[s]!));
}

/** Film and long wave of a floor, only to begin the search [W/m2K]. */
const usualWPerM2K = 11;

/** Radiation of heaters that a face takes up [W]. */
function sentByHeatersW({ heaters }: BoxModel, now: readonly HeaterNow[], s: number): number {
  let watts = 0;
  heaters.forEach((path, h) => {
    if (path.body.form === 'body')
      watts += path.longWave[s]! * now[h]!.radiatedW + path.shortWave[s]! * now[h]!.shortWaveW;
  });
  return watts;
}

/** What a face loses when it is some kelvin cooler than now, but for what does not hang on its temperature [W]. */
function faceOf(model: BoxModel, { state, net, moisture }: ShownBox, s: number): (fallK: number) => number {
  const { enclosure, parameters, radiant, greySum, areas } = model;
  const { lengthM, depthM, heightM } = enclosure.box;
  const diameterM = (2 * lengthM * depthM) / (lengthM + depthM);
  const node = layoutOf(model).airNode[s]!;
  const airC = state.airC[node]!;
  const ratio = moisture.ratio[node]!;
  const seenM2 = radiant.share[s]! * greySum[radiant.groupOf[s]!]!;
  const panelWPerK = throughPanelWPerK(model, net, s);
  const wet: readonly Exchange[] = moisture.floor.filter((e) => e.patch === s);
  const filmAt = (tempC: number) => insideFilm(floor, tempC - airC, diameterM, heightM) * parameters.insideFilm;
  const atFilm = net.film[s]!;
  return (fallK) => {
    const tempC = state.surfaceC[s]! - fallK;
    const film = filmAt(tempC);
    let watts = film * areas[s]! * (tempC - airC) + sigma * seenM2 * (tempC + 273.15) ** 4 + panelWPerK * tempC;
    for (const e of wet) watts += evaporationWAt(e, ratio, tempC, atFilm, film);
    return watts;
  };
}

/** From the face through the panel to what is beyond [W/K]. */
function throughPanelWPerK(model: BoxModel, net: Network, s: number): number {
  const { first, conductance } = layoutOf(model);
  let beyond = net.outerLink[s]!;
  for (let k = first[s + 1]! - 1; k >= first[s]!; k--) {
    const g = conductance[k]!;
    beyond = (g * beyond) / (g + beyond);
  }
  return beyond;
}

const mostTries = 60;
const closeK = 1e-9;

/** The fall that spares a face this much [K]: secants within a bracket, halved where they leave it.
 *  @param spares grows with the fall, 0 for none   @param guessK of the sign of the watts */
function fallFor(spares: (fallK: number) => number, watts: number, guessK: number): number {
  let near = 0;
  let nearMiss = -watts;
  let far = guessK;
  let farMiss = spares(far) - watts;
  while (farMiss * watts < 0) {
    near = far;
    nearMiss = farMiss;
    far *= 2;
    farMiss = spares(far) - watts;
  }
  let before = { at: near, miss: nearMiss };
  let now = { at: far, miss: farMiss };
  for (let i = 0; i < mostTries && now.miss !== 0 && Math.abs(far - near) > closeK; i++) {
    const secant = now.at - (now.miss * (now.at - before.at)) / (now.miss - before.miss);
    const within = (secant - near) * (secant - far) < 0;
    const at = within ? secant : (near + far) / 2;
    before = now;
    now = { at, miss: spares(at) - watts };
    if (now.miss * watts < 0) near = at;
    else far = at;
    if (Math.abs(now.at - before.at) <= closeK) break;
  }
  return now.at;
}
