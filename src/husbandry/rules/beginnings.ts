// Young animals and first homes: not too large and bare, starter tubs only where they belong, mats only for the slim and
// short, planted set-ups later. Leaves out: space (space.ts).

import type { Enclosure } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
import { cm, percent } from '../display.ts';
import type { Facts, Species } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { animalOf, basisOf, commonPractice, type JudgedAnimal, need, type Rule } from '../rule.ts';
import { factOf } from '../species-facts.ts';
import { isTub } from '../tub.ts';

/** Floor against the square of the animal's length from which a box is large for a young animal, and cover that makes up for it (our choice). */
export const bareLimits = { floorPerLengthSquared: 2, coverFrac: 0.3 } as const;
/** Heat mats alone suffice for slim animals up to this length [m] (common practice). */
export const matAloneMaxM = 1.0;
/** Cover and moist floor from which a set-up is taken to be planted (our choice). */
export const plantedLimits = { coverFrac: 0.4, wetFrac: 0.2 } as const;

const say = coded('beginnings', {
  bare: 'A young animal feels exposed in a large bare box: it goes off its food or grows defensive.',
  covered: 'Large for a young animal, but with enough cover.',
  snug: 'Not too large for a young animal.',
  wantCover: (share: string) => `cover over at least ${share} of the floor`,
  wantFloor: 'a floor in keeping with its length',
  coverIs: (long: string, deep: string, share: string) => `${long} × ${deep}, ${share} covered`,
  wantTub: 'tubs for small young animals of temperate country',
  tubIs: (length: string) => `tub, animal ${length}`,
  tubAdvice: 'the advice of a keeper or vet who knows this species',
  wantShort: (length: string) => `snakes up to about ${length}`,
  wantExperience: 'experience',
  looksPlanted: 'looks planted',
  addCover: 'Add cover (leaves, cork, more hides) before choosing a smaller box.',
  tubNo:
    'A starter tub is for small animals of temperate country; it holds too little warmth and moisture for this one.',
  tubGrown: 'It has outgrown a starter tub.',
  tubAsk: 'Whether a starter tub suits this animal is a matter of opinion.',
  tubYes: 'A starter tub suits a young animal of this kind.',
  box: 'Take a box with heat from above.',
  matLong: 'A heat mat alone does not warm a snake this long.',
  matFine: 'Slim and short enough to be kept warm by a mat.',
  above: 'Add a heater above, on a thermostat.',
  planted:
    'It looks like a planted set-up that cleans itself: these need experience, and are for later rather than for a first animal.',
});

function bare(enclosure: Enclosure, animal: JudgedAnimal): readonly NeedVerdict[] {
  if (animal.stage === 'adult') return [];
  const floor = enclosure.box.lengthM * enclosure.box.depthM;
  const large = floor > bareLimits.floorPerLengthSquared * animal.totalLengthM ** 2 + 1e-9;
  const exposed = large && enclosure.coverFrac < bareLimits.coverFrac - 1e-9;
  return [
    need(
      {
        id: 'too-bare',
        group: 'comfort',
        title: 'Not too large and bare for a young one',
        verdict: exposed ? 'fails' : 'holds',
        wanted: large ? say.wantCover(percent(bareLimits.coverFrac)) : say.wantFloor,
        found: say.coverIs(cm(enclosure.box.lengthM), cm(enclosure.box.depthM), percent(enclosure.coverFrac)),
        reasons: [exposed ? say.bare : large ? say.covered : say.snug],
        fixes: [say.addCover],
      },
      commonPractice,
    ),
  ];
}

function tub(enclosure: Enclosure, species: Species, animal: JudgedAnimal, facts: Facts): readonly NeedVerdict[] {
  if (!isTub(enclosure, facts)) return [];
  const fact = factOf(species, animal.stage, 'starterTub');
  const grown = animal.totalLengthM > matAloneMaxM + 1e-9 || (fact?.value === 'young-only' && animal.stage === 'adult');
  const verdict = fact?.value === 'no' || grown ? 'fails' : fact?.value === 'ask' || !fact ? 'not-known' : 'holds';
  const reason =
    fact?.value === 'no' ? say.tubNo : grown ? say.tubGrown : verdict === 'not-known' ? say.tubAsk : say.tubYes;
  const settled = verdict === 'not-known' ? { settledBy: say.tubAdvice } : {};
  return [
    need(
      {
        id: 'starter-tub',
        group: 'comfort',
        title: 'A tub only where it belongs',
        verdict,
        wanted: say.wantTub,
        found: say.tubIs(cm(animal.totalLengthM)),
        reasons: [reason],
        fixes: [say.box],
        ...settled,
      },
      fact ? basisOf(fact) : commonPractice,
    ),
  ];
}

function matAlone(enclosure: Enclosure, animal: JudgedAnimal): readonly NeedVerdict[] {
  const mats = enclosure.heaters.length > 0 && enclosure.heaters.every((heater) => heater.kind === 'heat-mat');
  if (!mats) return [];
  const long = animal.totalLengthM > matAloneMaxM + 1e-9;
  return [
    need(
      {
        id: 'mat-alone',
        group: 'heat',
        title: 'A mat alone only for the short and slim',
        verdict: long ? 'fails' : 'holds',
        wanted: say.wantShort(cm(matAloneMaxM)),
        found: cm(animal.totalLengthM),
        reasons: [long ? say.matLong : say.matFine],
        fixes: [say.above],
      },
      commonPractice,
    ),
  ];
}

function planted(enclosure: Enclosure): readonly NeedVerdict[] {
  const { substrate, coverFrac } = enclosure;
  const looks =
    substrate?.materialId === 'loam-leaf-litter' &&
    coverFrac >= plantedLimits.coverFrac - 1e-9 &&
    substrate.wetFrac >= plantedLimits.wetFrac - 1e-9;
  if (!looks) return [];
  // Advice, not a failing: a practised keeper may do well with it.
  const head = { id: 'planted', group: 'comfort', title: 'Planted set-ups are for later', verdict: 'holds' } as const;
  return [
    need({ ...head, wanted: say.wantExperience, found: say.looksPlanted, reasons: [say.planted] }, commonPractice),
  ];
}

export const beginningsRule: Rule = (enclosure, species, _standard, facts) => {
  const animal = animalOf(enclosure, species);
  if (!animal) return planted(enclosure);
  return [
    ...bare(enclosure, animal),
    ...tub(enclosure, species, animal, facts),
    ...matAlone(enclosure, animal),
    ...planted(enclosure),
  ];
};
