// What no node of a box at rest may pass, worked out on paper in docs/theory/box-bounds.md: from the room, what lies below, the
// heaters' own temperatures, the watts that fall on a face, and the weakest films that the program ever uses.
import type { Enclosure } from '../../src/physics/enclosure.ts';
import {
  filmStableAlamdariHammond,
  filmVerticalAlamdariHammond,
} from '../../src/physics/formulas/convection-alamdari-hammond.ts';
import { dewPointC } from '../../src/physics/formulas/dew-point.ts';
import { vapourPressurePaFromRatio } from '../../src/physics/formulas/moist-air.ts';
import { layoutOf } from '../../src/physics/kernel/layout.ts';
import type { BoxModel } from '../../src/physics/model.ts';
import type { SettledBox, SteadyConditions } from '../../src/physics/simulate.ts';
import { roomRatioOf } from '../../src/physics/steady.ts';

const sigma = 5.670374419e-8;

/** What is beyond a panel: another box below, else the room [degC]. */
const beyondC = (e: Enclosure, { roomC }: SteadyConditions, facing: string): number =>
  facing === 'floor' && e.box.base.kind === 'stacked' ? (e.box.base.belowC ?? roomC) : roomC;

/** The dew point of the room's air [degC]. */
export const roomDewC = ({ roomC, roomRhPct }: SteadyConditions): number =>
  dewPointC(vapourPressurePaFromRatio(roomRatioOf(roomC, roomRhPct)));

/** Nothing is colder [degC]. Evaporation alone cools no face below the dew point of the room's air; a dry box knows none. */
export function coldestC(e: Enclosure, conditions: SteadyConditions, isWet: boolean): number {
  const around = Math.min(conditions.roomC, beyondC(e, conditions, 'floor'));
  return isWet ? Math.min(around, roomDewC(conditions)) : around;
}

/** The hottest that warms by its temperature: the room, what lies below, the bodies of heaters [degC]. */
export function hottestSourceC(model: BoxModel, e: Enclosure, conditions: SteadyConditions, box: SettledBox): number {
  const bodies = box.now.filter((_, h) => model.heaters[h]!.body.form === 'body').map((n) => n.bodyC);
  return Math.max(conditions.roomC, beyondC(e, conditions, 'floor'), ...bodies);
}

/** A patch with the nodes behind it, and what falls on or into it. */
export interface Block {
  readonly patch: number;
  /** Temperatures of surface and nodes behind [degC]. */
  readonly tempC: readonly number[];
  /** Watts at the surface and at the sheet's node, place 0 = surface. */
  readonly watts: readonly number[];
  /** Conductances from node to node outward, the weakest link to what is beyond last [W/K]. */
  readonly outward: readonly number[];
  /** Weakest film and long wave of the surface [W/K]. */
  readonly inward: number;
  readonly beyondC: number;
}

export function blocksOf(model: BoxModel, e: Enclosure, conditions: SteadyConditions, box: SettledBox): Block[] {
  const lowK = coldestC(e, conditions, true) + 273.15;
  const { first, conductance, matAt, airNodes } = layoutOf(model);
  return model.grid.patches.map((p, s) => {
    const tempC = [box.state.surfaceC[s]!, ...box.state.behindC[s]!];
    const watts = tempC.map(() => 0);
    model.heaters.forEach((path, h) => {
      const { powerW, radiatedW, shortWaveW, convectedW } = box.now[h]!;
      for (const part of path.sheet)
        if (part.patch === s) {
          const at = path.heater.kind === 'heat-mat' ? nodeIn(matAt[s]!, s) : 0;
          watts[at] = watts[at]! + powerW * part.share;
        }
      if (path.body.form === 'body')
        watts[0] =
          watts[0]! +
          shortWaveW * path.shortWave[s]! +
          Math.max(0, radiatedW * path.longWave[s]!) +
          Math.max(0, path.outside ? 0 : convectedW * path.plumePatch[s]!);
    });
    watts[0] = watts[0]! + box.sunW * model.sunShares[s]!;
    const chain = Array.from(conductance.subarray(first[s]!, first[s + 1]!));
    return {
      patch: s,
      tempC,
      watts,
      outward: [...chain, weakestBeyondWPerK(model, e, s, lowK)],
      inward: p.role === 'mesh' ? 0 : weakestFilm(model, e, s) * p.areaM2 + 4 * sigma * model.greySum[s]! * lowK ** 3,
      beyondC: beyondC(e, conditions, p.facing),
    };
  });

  function nodeIn(row: number, s: number): number {
    const surface = airNodes + s;
    return row === surface ? 0 : row - airNodes - model.grid.patches.length - first[s]! + 1;
  }
}

const hydraulicM = ({ box: { lengthM, depthM } }: Enclosure): number => (2 * lengthM * depthM) / (lengthM + depthM);

/** Inside films grow with the difference, which counts as 0.1 K at least; the still one is the weaker of floor and ceiling. */
function weakestFilm({ grid, parameters }: BoxModel, e: Enclosure, s: number): number {
  const film =
    grid.patches[s]!.facing === 'wall'
      ? filmVerticalAlamdariHammond(0.1, e.box.heightM)
      : filmStableAlamdariHammond(0.1, hydraulicM(e));
  return film * parameters.insideFilm;
}

/** From the outermost node of a patch to what is beyond: films as for 0.2 K, radiation as at the coldest [W/K]. */
function weakestBeyondWPerK({ grid, parameters, areas, chains }: BoxModel, e: Enclosure, s: number, lowK: number) {
  const p = grid.patches[s]!;
  if (p.role === 'mesh') return 1e4 * areas[s]!;
  const { baseResistance } = chains[s]!;
  if (p.facing === 'floor' && e.box.base.kind === 'stacked') return areas[s]! / (baseResistance + 0.02);
  const film =
    p.facing === 'wall'
      ? filmVerticalAlamdariHammond(0.2, e.box.heightM)
      : filmStableAlamdariHammond(0.2, hydraulicM(e));
  return areas[s]! / (baseResistance + 1 / (film * parameters.outsideFilm + 0.9 * 4 * sigma * lowK ** 3));
}

/** The most that the hottest node of a block can come to [degC]: all its watts through the weakest links to `insideC` at its
 *  surface and `outsideC` beyond it. @param inward link of the surface [W/K] */
export function mostC(block: Block, inward: number, insideC: number, outsideC: number): number {
  const { watts, outward } = block;
  const n = watts.length;
  // eliminated from the surface outward: node k loses `own` in all once what lies inward of it is counted
  const own: number[] = [];
  const given: number[] = [];
  let link = inward;
  let reaches = inward * insideC;
  for (let k = 0; k < n; k++) {
    own.push(link + outward[k]!);
    given.push(reaches + watts[k]!);
    const passes = outward[k]! / own[k]!;
    reaches = given[k]! * passes;
    link = link * passes;
  }
  let next = outsideC;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = n - 1; k >= 0; k--) {
    next = (given[k]! + outward[k]! * next) / own[k]!;
    most = Math.max(most, next);
  }
  return most;
}
