// Is the box large enough for this animal under the chosen standard, and for how long?
// Leaves out: other standards (space-comparison.ts).
import type { Enclosure } from '../../physics/enclosure.ts';
import { cm, listed, squareMetres } from '../display.ts';
import type { Species } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { animalOf, basisOf, need, ourChoice, type Rule } from '../rule.ts';
import { type Asked, askedBy, covers, measure, type Short, servesUpToM } from '../space.ts';
import { rangeOf, wordOf } from '../species-facts.ts';
import type { Standard } from '../standard.ts';

const sideWords = {
  length: 'the length',
  width: 'the depth',
  height: 'the height',
  floor: 'the floor',
  perimeter: 'the way round the floor',
  sum: 'length and depth together',
} as const;

const amount = (side: Short['side'], x: number): string => (side === 'floor' ? squareMetres(x) : cm(x));

const say = {
  noStandard: 'No space standard has been chosen.',
  choose: 'Choose the standard that this home is to meet.',
  notCovered: (s: Standard) => `"${s.name}" is not written for this animal.`,
  noLength: 'The length of the animal is not known.',
  measureAnimal: 'the total length of the animal, nose to tail tip',
  short: (s: Short) => `${sideWords[s.side]} is ${amount(s.side, s.found)} and should be ${amount(s.side, s.asked)}`,
  tolerated: (s: Short) =>
    `${sideWords[s.side]} is a little under (${amount(s.side, s.found)} of ${amount(s.side, s.asked)}), which the standard tolerates`,
  meets: (s: Standard, length: string) => `Meets "${s.name}" for a snake of ${length}.`,
  assumed: (length: string) => `No animal is entered, so the longest usual adult (${length}) is judged.`,
  fix: (asked: string) => `A box of at least ${asked} inside.`,
  later: (length: string, asked: string) => `At ${length} it will need ${asked}: plan the larger box now.`,
  forLife: 'Large enough for the usual adult too.',
  serves: (length: string) => `This box serves until the animal is ${length} long.`,
} as const;

/** What a standard asks, in words. */
export function askedWords(asked: Asked): string {
  const parts: string[] = [];
  if (asked.lengthM !== null) {
    const sides = [asked.lengthM, asked.widthM, asked.heightM].filter((x) => x !== null);
    parts.push(
      asked.widthM === null && asked.heightM === null ? `${cm(asked.lengthM)} long` : sides.map(cm).join(' × '),
    );
  } else {
    if (asked.widthM !== null) parts.push(`${cm(asked.widthM)} deep`);
    if (asked.heightM !== null) parts.push(`${cm(asked.heightM)} high`);
  }
  if (asked.floorM2 !== null) parts.unshift(`${squareMetres(asked.floorM2)} of floor`);
  if (asked.perimeterM !== null) parts.unshift(`${cm(asked.perimeterM)} round the floor`);
  if (asked.sumM !== null) parts.unshift(`${cm(asked.sumM)} length and depth together`);
  return listed(parts);
}

export const boxWords = (enclosure: Enclosure): string =>
  [enclosure.box.lengthM, enclosure.box.depthM, enclosure.box.heightM].map(cm).join(' × ');

const climbsOf = (species: Species): boolean => wordOf(species, 'adult', 'climbs') === 'yes';

function spaceNow(enclosure: Enclosure, species: Species, standard: Standard): NeedVerdict {
  const animal = animalOf(enclosure, species);
  const head = { id: 'space-now', group: 'space', title: 'Room for the animal now' } as const;
  const found = boxWords(enclosure);
  if (!animal)
    return need(
      {
        ...head,
        verdict: 'not-known',
        wanted: standard.name,
        found,
        reasons: [say.noLength],
        settledBy: say.measureAnimal,
      },
      basisOf(standard),
    );
  const asked = askedBy(standard.rule, animal.totalLengthM);
  const wanted = askedWords(asked);
  const length = cm(animal.totalLengthM);
  const assumed = animal.assumed ? [say.assumed(length)] : [];
  if (!covers(standard, species.id, climbsOf(species), animal.totalLengthM))
    return need(
      {
        ...head,
        verdict: 'not-known',
        wanted,
        found,
        reasons: [say.notCovered(standard)],
        fixes: [say.choose],
        settledBy: say.choose,
      },
      basisOf(standard),
    );
  const { short, tolerated } = measure(asked, enclosure.box);
  if (short.length === 0)
    return need(
      {
        ...head,
        verdict: 'holds',
        wanted,
        found,
        reasons: [say.meets(standard, length), ...tolerated.map(say.tolerated), ...assumed],
      },
      basisOf(standard),
    );
  const why = `Under "${standard.name}" ${listed(short.map(say.short))} for a snake of ${length}.`;
  return need(
    { ...head, verdict: 'fails', wanted, found, reasons: [why, ...assumed], fixes: [say.fix(wanted)] },
    basisOf(standard),
  );
}

export interface SpaceStage {
  readonly stage: 'hatchling' | 'young' | 'adult';
  /** Longest usual length of that stage [m]. */
  readonly totalLengthM: number;
  readonly asked: Asked;
  readonly askedWords: string;
  readonly meets: boolean;
}

/** The same box at each stage of growth; stages the standard does not cover are left out. */
export function spaceByStage(enclosure: Enclosure, species: Species, standard: Standard): readonly SpaceStage[] {
  return (['hatchling', 'young', 'adult'] as const).flatMap((stage) => {
    const length = rangeOf(species, stage, 'totalLengthCm');
    if (!length || !covers(standard, species.id, climbsOf(species), length.high / 100)) return [];
    const totalLengthM = length.high / 100;
    const asked = askedBy(standard.rule, totalLengthM);
    const meets = measure(asked, enclosure.box).short.length === 0;
    return [{ stage, totalLengthM, asked, askedWords: askedWords(asked), meets }];
  });
}

function spaceLater(enclosure: Enclosure, species: Species, standard: Standard): readonly NeedVerdict[] {
  const adult = spaceByStage(enclosure, species, standard).find((s) => s.stage === 'adult');
  if (!adult) return [];
  const reasons = adult.meets
    ? [say.forLife]
    : [say.later(cm(adult.totalLengthM), adult.askedWords), say.serves(cm(servesUpToM(standard, enclosure.box)))];
  return [
    need(
      {
        id: 'space-later',
        group: 'space',
        title: 'Room as it grows',
        // Outgrowing a box later is no failing of the home today; it is a date in the diary.
        verdict: 'holds',
        wanted: adult.askedWords,
        found: boxWords(enclosure),
        reasons,
      },
      basisOf(standard),
    ),
  ];
}

/** Room now under the chosen standard, and what the grown animal will need. */
export const spaceRule: Rule = (enclosure, species, standard) => {
  if (!standard)
    return [
      need(
        {
          id: 'space-now',
          group: 'space',
          title: 'Room for the animal now',
          verdict: 'not-known',
          wanted: 'a chosen standard',
          found: boxWords(enclosure),
          reasons: [say.noStandard],
          fixes: [say.choose],
          settledBy: say.choose,
        },
        ourChoice,
      ),
    ];
  return [spaceNow(enclosure, species, standard), ...spaceLater(enclosure, species, standard)];
};
