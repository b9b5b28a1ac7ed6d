// Two hides, one at each end, and neither too small nor so large that the animal does not feel held.
// Leaves out: how warm each hide is (the simulation).

import type { Enclosure, Hide } from '../../physics/enclosure.ts';
import { bodyDiameterM, coilAreaM2 } from '../body.ts';
import { coded } from '../coded.ts';
import { cm } from '../display.ts';
import type { NeedVerdict } from '../need.ts';
import { animalOf, commonPractice, endAt, type JudgedAnimal, need, ourChoice, type Rule, warmEndOf } from '../rule.ts';

/** Floor of a hide against the animal coiled flat: least share, and most (four times plus a little for small ones). */
export const hideFit = { leastOfCoil: 0.5, mostOfCoil: 4, mostPlusM2: 0.015, heightOfBody: 1.2 } as const;

const say = coded('hides', {
  want: 'one warm and one cool hide',
  drawn: (count: string) => `${count} drawn`,
  noneFound: 'none',
  whereHeater: 'where the heater goes',
  wantFit: (least: string, most: string, height: string) => `${least} to ${most} cm² of floor, at least ${height} high`,
  none: 'There is nowhere to hide.',
  onlyCool:
    'Only the cool end has a hide: an animal that will not leave it stays cold, which invites airway infection.',
  onlyWarm:
    'Only the warm end has a hide: an animal that will not leave it stays hot, which dries it out, binds it and spoils the slough.',
  both: 'There is a hide at the warm end and one at the cool end.',
  noEnd: 'No heater is drawn, so there is no warm end yet.',
  add: (end: string) => `Put a hide at the ${end} end.`,
  addBoth: 'Put one hide at the warm end and one at the cool end.',
  small: (size: string) => `A hide of ${size} is too small for the animal coiled up.`,
  low: (height: string) => `A hide ${height} high is too low for its body.`,
  large: (size: string) => `A hide of ${size} is so roomy that its sides do not touch the animal.`,
  fits: 'The hides fit the coiled animal.',
  estimate: 'Body thickness is estimated from length alone; weigh the animal for a better answer.',
  fixSmall: 'Take a larger hide that the animal can lie in coiled.',
  fixLarge: 'Take a smaller hide, or fill it with crumpled paper or moss.',
});

function bothEnds(enclosure: Enclosure): NeedVerdict {
  const head = {
    id: 'two-hides',
    group: 'security',
    title: 'A hide at each end',
    wanted: say.want,
  } as const;
  const found = say.drawn(String(enclosure.hides.length));
  const end = warmEndOf(enclosure);
  if (enclosure.hides.length === 0)
    return need(
      { ...head, verdict: 'fails', found: say.noneFound, reasons: [say.none], fixes: [say.addBoth] },
      commonPractice,
    );
  if (!end)
    return need(
      { ...head, verdict: 'not-known', found, reasons: [say.noEnd], settledBy: say.whereHeater },
      commonPractice,
    );
  const warm = enclosure.hides.some((hide) => endAt(enclosure, hide.xM) === end);
  const cool = enclosure.hides.some((hide) => endAt(enclosure, hide.xM) !== end);
  if (warm && cool) return need({ ...head, verdict: 'holds', found, reasons: [say.both] }, commonPractice);
  const reason = warm ? say.onlyWarm : say.onlyCool;
  return need(
    { ...head, verdict: 'fails', found, reasons: [reason], fixes: [say.add(warm ? 'cool' : 'warm')] },
    commonPractice,
  );
}

const sizeOf = (hide: Hide): string => `${cm(hide.lengthM)} × ${cm(hide.depthM)}`;

function fit(hides: readonly Hide[], animal: JudgedAnimal): NeedVerdict {
  const coil = coilAreaM2(animal.totalLengthM, animal.massG);
  const body = bodyDiameterM(animal.totalLengthM, animal.massG);
  const least = hideFit.leastOfCoil * coil;
  const most = hideFit.mostOfCoil * coil + hideFit.mostPlusM2;
  const area = (hide: Hide) => hide.lengthM * hide.depthM;
  const small = hides.filter((hide) => area(hide) < least);
  const low = hides.filter((hide) => hide.heightM < hideFit.heightOfBody * body);
  const large = hides.filter((hide) => area(hide) > most);
  const reasons = [
    ...small.map((hide) => say.small(sizeOf(hide))),
    ...low.map((hide) => say.low(cm(hide.heightM))),
    ...large.map((hide) => say.large(sizeOf(hide))),
  ];
  const fails = reasons.length > 0;
  const notes = animal.massG === null ? [say.estimate] : [];
  return need(
    {
      id: 'hide-fit',
      group: 'comfort',
      title: 'Hides that fit',
      verdict: fails ? 'fails' : 'holds',
      wanted: say.wantFit((least * 1e4).toFixed(0), (most * 1e4).toFixed(0), cm(hideFit.heightOfBody * body)),
      found: hides.map(sizeOf).join(', '),
      reasons: [
        ...(fails ? reasons.filter((one, i) => reasons.findIndex((other) => other.en === one.en) === i) : [say.fits]),
        ...notes,
      ],
      fixes: [...(small.length + low.length > 0 ? [say.fixSmall] : []), ...(large.length > 0 ? [say.fixLarge] : [])],
    },
    ourChoice,
  );
}

export const hidesRule: Rule = (enclosure, species) => {
  const animal = animalOf(enclosure, species);
  const fits = animal && enclosure.hides.length > 0 ? [fit(enclosure.hides, animal)] : [];
  return [bothEnds(enclosure), ...fits];
};
