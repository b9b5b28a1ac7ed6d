// Can the animal get out? A lock, and no gap that its head might pass.
// Leaves out: the size of the mesh and of vent slots, which the file does not hold.

import type { Enclosure } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
import { mm } from '../display.ts';
import type { Species } from '../fact.ts';
import type { NeedVerdict } from '../need.ts';
import { animalOf, commonPractice, need, ourChoice, type Rule } from '../rule.ts';
import { rangeOf } from '../species-facts.ts';

/** A head is flatter than wide and gives a little: gaps up to half its width are safe, from three quarters on they are not (our choice). */
export const gapOfHead = { safe: 0.5, unsafe: 0.75 } as const;

const say = coded('escape', {
  locked: 'It locks: children cannot open it, and a turned key shows that the door was shut.',
  notLocked: {
    catch: 'A catch holds the door, but a child can open it and nothing shows that it was shut.',
    none: 'Nothing holds the door.',
  },
  wantLock: 'a lock',
  closing: { lock: 'lock', catch: 'catch', none: 'none' },
  wantGap: (most: string) => `no gap over ${most}`,
  notMeasured: 'not measured',
  fixLock: 'Fit a lock.',
  noGap: 'Nobody has measured the widest gap.',
  safe: 'Too narrow for its head.',
  open: (head: string) => `The head of such an animal is about ${head} wide and flatter than that: it may pass.`,
  doubtful: (head: string) =>
    `The head of such an animal is about ${head} wide; whether it passes depends on this one.`,
  close: 'Close the gap with a strip, brush or foam, cable holes too.',
  measureGap: 'the widest gap round doors and cable holes, with a gauge or a stack of cards',
  measureHead: "the width of this animal's head",
});

const lock = (enclosure: Enclosure): NeedVerdict =>
  need(
    {
      id: 'lock',
      group: 'security',
      title: 'A lock',
      verdict: enclosure.lock === 'lock' ? 'holds' : 'fails',
      wanted: say.wantLock,
      found: say.closing[enclosure.lock],
      reasons: [enclosure.lock === 'lock' ? say.locked : say.notLocked[enclosure.lock]],
      fixes: [say.fixLock],
    },
    commonPractice,
  );

function gap(enclosure: Enclosure, species: Species): readonly NeedVerdict[] {
  const animal = animalOf(enclosure, species);
  const head = animal ? rangeOf(species, animal.stage, 'headWidthMm') : null;
  if (!head) return [];
  const safeM = (gapOfHead.safe * head.low) / 1000;
  const unsafeM = (gapOfHead.unsafe * head.low) / 1000;
  const part = { id: 'gap', group: 'security', title: 'No way out', wanted: say.wantGap(mm(safeM)) } as const;
  const width = enclosure.box.widestGapM;
  const headWords = `${head.low} mm`;
  if (width === null)
    return [
      need(
        { ...part, verdict: 'not-known', found: say.notMeasured, reasons: [say.noGap], settledBy: say.measureGap },
        ourChoice,
      ),
    ];
  const found = mm(width);
  if (width <= safeM + 1e-9) return [need({ ...part, verdict: 'holds', found, reasons: [say.safe] }, ourChoice)];
  if (width >= unsafeM - 1e-9)
    return [need({ ...part, verdict: 'fails', found, reasons: [say.open(headWords)], fixes: [say.close] }, ourChoice)];
  return [
    need(
      {
        ...part,
        verdict: 'not-known',
        found,
        reasons: [say.doubtful(headWords)],
        fixes: [say.close],
        settledBy: say.measureHead,
      },
      ourChoice,
    ),
  ];
}

export const escapeRule: Rule = (enclosure, species) => [lock(enclosure), ...gap(enclosure, species)];
