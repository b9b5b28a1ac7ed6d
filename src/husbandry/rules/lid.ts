// Can this lid hold the humidity that the animal needs?
// Leaves out: the humidity itself, hour by hour (the simulation).

import type { Enclosure } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
import { percent } from '../display.ts';
import { animalOf, commonPractice, need, type Rule } from '../rule.ts';
import { rangeOf, wordOf } from '../species-facts.ts';
import { isTub } from '../tub.ts';

/** Uncovered mesh in the lid from which it is called open, and humidity from which an animal is called moisture-loving (our choice). */
export const lidLimits = { openMeshFrac: 0.25, moistRhPct: 50 } as const;

const say = coded('lid', {
  open: (share: string) => `${share} of the lid is open mesh: it does not hold the moist air that this animal needs.`,
  doubt: (share: string) =>
    `${share} of the lid is open mesh: whether the air stays moist enough depends on room and watering.`,
  dry: 'The lid is open, and the animal is of dry country.',
  closed: 'Little or no open mesh in the lid.',
  wantRh: (low: string, high: string) => `${low} to ${high} % humidity`,
  wantEnough: 'enough humidity',
  lidOpen: (share: string) => `${share} of the lid open`,
  fix: 'Cover most of the mesh away from the lamp with something heat-proof, or take a box with a closed lid and small vents; then simulate again, for the box grows warmer too.',
  settle: 'the humidity at both ends over a day',
});

/** Share of the lid that is uncovered mesh, 0..1. */
export const openMeshFrac = ({ box }: Enclosure): number =>
  (box.panels.top.meshShareFrac ?? 0) * (1 - (box.panels.top.meshCoveredFrac ?? 0));

export const lidRule: Rule = (enclosure, species, _standard, facts) => {
  const stage = animalOf(enclosure, species)?.stage ?? 'adult';
  const rh = rangeOf(species, stage, 'rhPct');
  const open = openMeshFrac(enclosure);
  const zone = wordOf(species, stage, 'climateKind');
  const needsMoist = (rh !== null && rh.low >= lidLimits.moistRhPct) || zone === 'tropical';
  const head = { id: 'lid-humidity', group: 'moisture', title: 'A lid that holds the moisture' } as const;
  const wanted = rh ? say.wantRh(String(rh.low), String(rh.high)) : say.wantEnough;
  const found = say.lidOpen(percent(open));
  if (open <= lidLimits.openMeshFrac + 1e-9)
    return [need({ ...head, verdict: 'holds', wanted, found, reasons: [say.closed] }, commonPractice)];
  const warmCountry = zone === 'subtropical' && isTub(enclosure, facts);
  if (needsMoist || warmCountry)
    return [
      need(
        { ...head, verdict: 'fails', wanted, found, reasons: [say.open(percent(open))], fixes: [say.fix] },
        commonPractice,
      ),
    ];
  if (zone === 'subtropical')
    return [
      need(
        {
          ...head,
          verdict: 'not-known',
          wanted,
          found,
          reasons: [say.doubt(percent(open))],
          settledBy: say.settle,
          fixes: [say.fix],
        },
        commonPractice,
      ),
    ];
  return [need({ ...head, verdict: 'holds', wanted, found, reasons: [say.dry] }, commonPractice)];
};
