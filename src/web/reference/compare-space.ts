// Which standards are written for this animal, what floor each asks for, and which a given box meets.
// Leaves out the drawing. As husbandry/rules/space-comparison.ts, for a length and a box without an enclosure file.
import type { Species } from '../../husbandry/fact.ts';
import {
  type Asked,
  askedBy,
  covers,
  type Inside,
  measure,
  type Short,
  type SpaceSide,
} from '../../husbandry/space.ts';
import { wordOf } from '../../husbandry/species-facts.ts';
import type { Standard } from '../../husbandry/standard.ts';

export interface Floor {
  readonly lengthM: number;
  readonly depthM: number;
  /** Only an area, a sum or a length is asked: the shape is ours, twice as long as deep. */
  readonly free: boolean;
}

export interface SpaceLine {
  readonly standard: Standard;
  readonly asked: Asked;
  readonly floor: Floor;
  readonly areaM2: number;
  readonly short: readonly Short[];
  readonly tolerated: readonly Short[];
}

/** The floor to draw for what is asked [m]. */
export function floorOf(asked: Asked): Floor {
  const { lengthM, widthM, floorM2, perimeterM, sumM } = asked;
  if (lengthM !== null && widthM !== null) return { lengthM, depthM: widthM, free: false };
  if (perimeterM !== null && widthM !== null)
    return { lengthM: Math.max(widthM, perimeterM / 2 - widthM), depthM: widthM, free: false };
  if (floorM2 !== null) return { lengthM: Math.sqrt(floorM2 * 2), depthM: Math.sqrt(floorM2 / 2), free: true };
  if (sumM !== null) return { lengthM: (sumM * 2) / 3, depthM: sumM / 3, free: true };
  const long = lengthM ?? 0;
  return { lengthM: long, depthM: long / 2, free: true };
}

/** Sides that a standard names, in the order they are said. */
export function askedSides(asked: Asked): readonly (readonly [SpaceSide, number])[] {
  const sides: readonly (readonly [SpaceSide, number | null])[] = [
    ['floor', asked.floorM2],
    ['perimeter', asked.perimeterM],
    ['sum', asked.sumM],
    ['length', asked.lengthM],
    ['width', asked.widthM],
    ['height', asked.heightM],
  ];
  return sides.filter((side): side is readonly [SpaceSide, number] => side[1] !== null);
}

/** Smallest asked floor first. */
export function compareSpace(
  standards: readonly Standard[],
  species: Species,
  totalLengthM: number,
  box: Inside,
): readonly SpaceLine[] {
  const climbs = wordOf(species, 'adult', 'climbs') === 'yes';
  const written = standards.filter((standard) => covers(standard, species.id, climbs, totalLengthM));
  const replaced = new Set(written.flatMap((standard) => standard.replaces ?? []));
  return written
    .filter((standard) => !replaced.has(standard.id))
    .map((standard) => {
      const asked = askedBy(standard.rule, totalLengthM);
      const floor = floorOf(asked);
      const { short, tolerated } = measure(asked, box);
      return { standard, asked, floor, areaM2: floor.lengthM * floor.depthM, short, tolerated };
    })
    .sort((a, b) => a.areaM2 - b.areaM2);
}
