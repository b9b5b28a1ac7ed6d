// How large a box does a standard ask for, does this one meet it, and up to what length of snake will it serve?
// Leaves out: which standard a shop should choose, and comfort inside the box.
import type { SpaceRule, Standard } from './standard.ts';

/** Inside of a box, any way round: length is the longer side of the floor [m]. */
export interface Inside {
  readonly lengthM: number;
  readonly depthM: number;
  readonly heightM: number;
}

/** What is asked; null = the standard is silent on it. Lengths [m], area [m²]. */
export interface Asked {
  readonly lengthM: number | null;
  readonly widthM: number | null;
  readonly heightM: number | null;
  readonly floorM2: number | null;
  readonly perimeterM: number | null;
  /** Length and width together [m]. */
  readonly sumM: number | null;
  /** How far under is tolerated, share 0..1. */
  readonly underFrac: number;
}

export type SpaceSide = 'length' | 'width' | 'height' | 'floor' | 'perimeter' | 'sum';

export interface Short {
  readonly side: SpaceSide;
  readonly asked: number;
  readonly found: number;
}

export interface SpaceFinding {
  readonly asked: Asked;
  /** Sides below what is asked and below what is tolerated. */
  readonly short: readonly Short[];
  /** Sides below what is asked but tolerated. */
  readonly tolerated: readonly Short[];
}

const silent: Asked = {
  lengthM: null,
  widthM: null,
  heightM: null,
  floorM2: null,
  perimeterM: null,
  sumM: null,
  underFrac: 0,
};

/** What a rule asks for one or more snakes.
 *  @param totalLengthM nose to tail tip [m]      @param animals at least 1
 *  Source: the standard's own row. Checks: space-worked.json. */
export function askedBy(rule: SpaceRule, totalLengthM: number, animals = 1): Asked {
  const L = totalLengthM;
  switch (rule.kind) {
    case 'shares': {
      const extra = 1 + (rule.extraVolumeFrac ?? 0) * Math.max(0, animals - (rule.animals ?? 1));
      const height = rule.heightShare === null ? null : Math.min(rule.heightShare * L, rule.heightCapM ?? Infinity);
      const width = rule.widthShare === null ? null : rule.widthShare * L;
      const floorM2 = extra > 1 && width !== null ? rule.lengthShare * L * width * extra : null;
      const underFrac = rule.underFrac ?? 0;
      return { ...silent, lengthM: rule.lengthShare * L, widthM: width, heightM: height, floorM2, underFrac };
    }
    case 'bands': {
      const band = rule.bands.find((b) => b.maxLengthM === null || L <= b.maxLengthM + 1e-9) ?? rule.bands.at(-1);
      if (!band) return silent;
      const more = Math.max(0, animals - (rule.animals ?? 1));
      return { ...silent, floorM2: band.floorM2 + more * band.extraFloorM2, heightM: band.heightM };
    }
    case 'perimeter': {
      const more = Math.max(0, animals - rule.animals);
      const perimeterM = rule.perimeterShare * L * (1 + rule.extraPerimeterFrac * more);
      return { ...silent, perimeterM, widthM: Math.min(rule.widthCapM, Math.max(rule.widthMinM, rule.widthShare * L)) };
    }
    case 'sum':
      return { ...silent, sumM: rule.sumShare * L };
    case 'fixed': {
      const stretched = rule.fullStretchAboveM !== undefined && L > rule.fullStretchAboveM;
      const lengthM = stretched ? Math.max(L, rule.lengthM) : rule.lengthM;
      return { ...silent, lengthM, widthM: rule.widthM, heightM: rule.heightM };
    }
  }
}

/** Sides of a box that fall short of what is asked. */
export function measure(asked: Asked, box: Inside): SpaceFinding {
  const long = Math.max(box.lengthM, box.depthM);
  const wide = Math.min(box.lengthM, box.depthM);
  const sides: readonly (readonly [SpaceSide, number | null, number])[] = [
    ['length', asked.lengthM, long],
    ['width', asked.widthM, wide],
    ['height', asked.heightM, box.heightM],
    ['floor', asked.floorM2, long * wide],
    ['perimeter', asked.perimeterM, 2 * (long + wide)],
    ['sum', asked.sumM, long + wide],
  ];
  const short: Short[] = [];
  const tolerated: Short[] = [];
  for (const [side, want, found] of sides) {
    if (want === null || found >= want - 1e-9) continue;
    (found >= want * (1 - asked.underFrac) - 1e-9 ? tolerated : short).push({ side, asked: want, found });
  }
  return { asked, short, tolerated };
}

/** Is this standard written for this animal? */
export function covers(standard: Standard, speciesId: string, climbs: boolean, totalLengthM: number): boolean {
  const { speciesIds, habit, fromLengthM, toLengthM } = standard;
  if (speciesIds !== null && !speciesIds.includes(speciesId)) return false;
  if (habit !== null && (habit === 'climbing') !== climbs) return false;
  return totalLengthM > (fromLengthM ?? 0) && totalLengthM <= (toLengthM ?? Infinity) + 1e-9;
}

/** Longest snake, to the whole centimetre, that this box still serves under a standard; 0 when it serves none. */
export function servesUpToM(standard: Standard, box: Inside, animals = 1): number {
  const lastCm = Math.round(Math.min(standard.toLengthM ?? 5, 5) * 100);
  let best = 0;
  for (let cm = 5; cm <= lastCm; cm += 1) {
    if (measure(askedBy(standard.rule, cm / 100, animals), box).short.length > 0) break;
    best = cm / 100;
  }
  return best;
}
