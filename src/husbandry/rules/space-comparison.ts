// Which other standards does this very box meet for this animal? A table for the screen, not a need.
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Facts, Species } from '../fact.ts';
import { animalOf } from '../rule.ts';
import { askedBy, covers, measure, type Short, servesUpToM } from '../space.ts';
import { wordOf } from '../species-facts.ts';
import type { Standard } from '../standard.ts';
import { askedWords } from './space.ts';

export interface StandardFinding {
  readonly standard: Standard;
  readonly meets: boolean;
  /** Meets it only within what the standard itself tolerates. */
  readonly withinTolerance: boolean;
  readonly short: readonly Short[];
  readonly askedWords: string;
  /** Longest snake that this box serves under the standard [m]. */
  readonly servesUpToM: number;
}

/** Every standard that is written for this animal, met ones first, each with what it asks. */
export function standardComparison(enclosure: Enclosure, species: Species, facts: Facts): readonly StandardFinding[] {
  const animal = animalOf(enclosure, species);
  if (!animal) return [];
  const climbs = wordOf(species, animal.stage, 'climbs') === 'yes';
  const written = Object.values(facts.standards).filter((s) => covers(s, species.id, climbs, animal.totalLengthM));
  const replaced = new Set(written.flatMap((s) => s.replaces ?? []));
  return written
    .filter((standard) => !replaced.has(standard.id))
    .map((standard) => {
      const { asked, short, tolerated } = measure(askedBy(standard.rule, animal.totalLengthM), enclosure.box);
      const meets = short.length === 0;
      const withinTolerance = meets && tolerated.length > 0;
      return {
        standard,
        meets,
        withinTolerance,
        short,
        askedWords: askedWords(asked),
        servesUpToM: servesUpToM(standard, enclosure.box),
      };
    })
    .sort((a, b) => Number(b.meets) - Number(a.meets));
}
