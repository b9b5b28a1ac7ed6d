// Is the box large enough for this animal under the chosen standard, and for how long?
// Leaves out: other standards (space-comparison.ts).

import type { Enclosure } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
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

const say = coded('space', {
  noStandard: 'No space standard has been chosen.',
  wantStandard: 'a chosen standard',
  choose: 'Choose the standard that this home is to meet.',
  notCovered: (standard: string) => `"${standard}" is not written for this animal.`,
  noLength: 'The length of the animal is not known.',
  measureAnimal: 'the total length of the animal, nose to tail tip',
  why: (standard: string, _sides: string, written: string, length: string) =>
    `Under "${standard}" ${written} for a snake of ${length}.`,
  tolerated: (_side: string, side: string, found: string, asked: string) =>
    `${side} is a little under (${found} of ${asked}), which the standard tolerates`,
  meets: (standard: string, length: string) => `Meets "${standard}" for a snake of ${length}.`,
  assumed: (length: string) => `No animal is entered, so the longest usual adult (${length}) is judged.`,
  fix: (asked: string) => `A box of at least ${asked} inside.`,
  later: (length: string, asked: string) => `At ${length} it will need ${asked}: plan the larger box now.`,
  forLife: 'Large enough for the usual adult too.',
  serves: (length: string) => `This box serves until the animal is ${length} long.`,
});

const shortWords = (s: Short): string =>
  `${sideWords[s.side]} is ${amount(s.side, s.found)} and should be ${amount(s.side, s.asked)}`;
/** "length|120 cm|150 cm", for other languages. */
const sideOf = (s: Short): string => [s.side, amount(s.side, s.found), amount(s.side, s.asked)].join('|');

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

const names = coded('name', {
  asked: (_parts: string, written: string) => written,
  fact: (text: string) => text,
});

/** The same with its parts for other languages: length, width, height [m], floor [m²], way round, sum [m]. */
const askedSaying = (asked: Asked) =>
  names.asked(
    [asked.lengthM, asked.widthM, asked.heightM, asked.floorM2, asked.perimeterM, asked.sumM]
      .map((x) => x ?? '')
      .join('|'),
    askedWords(asked),
  );

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
        wanted: names.fact(standard.name),
        found,
        reasons: [say.noLength],
        settledBy: say.measureAnimal,
      },
      basisOf(standard),
    );
  const asked = askedBy(standard.rule, animal.totalLengthM);
  const wanted = askedSaying(asked);
  const length = cm(animal.totalLengthM);
  const assumed = animal.assumed ? [say.assumed(length)] : [];
  if (!covers(standard, species.id, climbsOf(species), animal.totalLengthM))
    return need(
      {
        ...head,
        verdict: 'not-known',
        wanted,
        found,
        reasons: [say.notCovered(names.fact(standard.name))],
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
        reasons: [
          say.meets(names.fact(standard.name), length),
          ...tolerated.map((s) =>
            say.tolerated(s.side, sideWords[s.side], amount(s.side, s.found), amount(s.side, s.asked)),
          ),
          ...assumed,
        ],
      },
      basisOf(standard),
    );
  const why = say.why(names.fact(standard.name), short.map(sideOf).join(';'), listed(short.map(shortWords)), length);
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
    : [
        say.later(cm(adult.totalLengthM), askedSaying(adult.asked)),
        say.serves(cm(servesUpToM(standard, enclosure.box))),
      ];
  return [
    need(
      {
        id: 'space-later',
        group: 'space',
        title: 'Room as it grows',
        // Outgrowing a box later is no failing of the home today; it is a date in the diary.
        verdict: 'holds',
        wanted: askedSaying(adult.asked),
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
          wanted: say.wantStandard,
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
