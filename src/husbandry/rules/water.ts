// Is there water, at the cool end, in a bowl the animal can soak in?
// Leaves out: what the bowl does to humidity (the simulation).

import { coilAreaM2 } from '../body.ts';
import { coded } from '../coded.ts';
import { cm } from '../display.ts';
import { animalOf, commonPractice, endAt, need, type Rule, warmEndOf } from '../rule.ts';
import { wordOf } from '../species-facts.ts';

const say = coded('water', {
  want: 'a bowl at the cool end',
  noBowl: 'no bowl',
  bowlAt: (x: string) => `bowl ${x} from the left wall`,
  whereHeater: 'where the heater goes',
  wantSmall: 'a small bowl',
  wantAcross: (d: string) => `at least ${d} across`,
  across: (d: string) => `${d} across`,
  none: 'No water bowl is drawn.',
  add: 'Put a heavy bowl of fresh water at the cool end.',
  warm: 'The bowl stands at the warm end, where the water fouls faster and the air grows damp.',
  move: 'Move the bowl to the cool end.',
  cool: 'The bowl stands at the cool end. Fresh water every day.',
  noEnd: 'No heater is drawn, so there is no cool end yet.',
  soaks: 'Wide enough to lie in coiled.',
  narrow: 'The bowl is too narrow for the animal to soak in.',
  wider: (d: string) => `Take a bowl about ${d} across.`,
  arid: 'An animal of dry country: a small bowl is enough.',
});

/** A coiled animal piles up: the bowl may be this share of the flat coil (our choice). */
const soakShareOfCoil = 0.5;

export const waterRule: Rule = (enclosure, species) => {
  const { bowl } = enclosure;
  const place = {
    id: 'bowl-cool-end',
    group: 'moisture',
    title: 'Water at the cool end',
    wanted: say.want,
  } as const;
  if (!bowl)
    return [
      need({ ...place, verdict: 'fails', found: say.noBowl, reasons: [say.none], fixes: [say.add] }, commonPractice),
    ];
  const end = warmEndOf(enclosure);
  const warm = end !== null && endAt(enclosure, bowl.xM) === end;
  const found = say.bowlAt(cm(bowl.xM));
  const where = end
    ? need(
        {
          ...place,
          verdict: warm ? 'fails' : 'holds',
          found,
          reasons: [warm ? say.warm : say.cool],
          fixes: [say.move],
        },
        commonPractice,
      )
    : need({ ...place, verdict: 'not-known', found, reasons: [say.noEnd], settledBy: say.whereHeater }, commonPractice);
  const animal = animalOf(enclosure, species);
  if (!animal) return [where];
  const arid = wordOf(species, animal.stage, 'climateKind') === 'arid';
  const least = Math.sqrt((4 * soakShareOfCoil * coilAreaM2(animal.totalLengthM, animal.massG)) / Math.PI);
  const wide = arid || bowl.diameterM >= least;
  const soak = need(
    {
      id: 'bowl-size',
      group: 'comfort',
      title: 'A bowl to soak in',
      verdict: wide ? 'holds' : 'fails',
      wanted: arid ? say.wantSmall : say.wantAcross(cm(least)),
      found: say.across(cm(bowl.diameterM)),
      reasons: [arid ? say.arid : wide ? say.soaks : say.narrow],
      fixes: [say.wider(cm(least))],
    },
    { source: 'VET-HANDOUT', read: 'page' },
  );
  return [where, soak];
};
