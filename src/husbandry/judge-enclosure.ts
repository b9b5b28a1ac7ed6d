// Every need that can be judged from the drawing alone, all at once.
// Leaves out: temperatures, humidity and dew over the day and year, which the planning room adds by simulation.
import type { Enclosure } from '../physics/enclosure.ts';
import type { Facts, Species } from './fact.ts';
import type { NeedVerdict } from './need.ts';
import type { Rule } from './rule.ts';
import { beginningsRule } from './rules/beginnings.ts';
import { escapeRule } from './rules/escape.ts';
import { heatersRule } from './rules/heaters.ts';
import { hidesRule } from './rules/hides.ts';
import { lidRule } from './rules/lid.ts';
import { loadRule } from './rules/load.ts';
import { probeRule } from './rules/probe.ts';
import { spaceRule } from './rules/space.ts';
import { substrateRule } from './rules/substrate.ts';
import { thermometersRule } from './rules/thermometers.ts';
import { waterRule } from './rules/water.ts';
import type { Standard } from './standard.ts';

/** In the order in which they are shown: what can hurt first. */
export const enclosureRules: readonly Rule[] = [
  heatersRule,
  loadRule,
  probeRule,
  thermometersRule,
  escapeRule,
  spaceRule,
  hidesRule,
  waterRule,
  lidRule,
  substrateRule,
  beginningsRule,
];

/** @param standard the space standard that the shop chose, or null when none is chosen */
export const judgeEnclosure = (
  enclosure: Enclosure,
  species: Species,
  standard: Standard | null,
  facts: Facts,
): readonly NeedVerdict[] => enclosureRules.flatMap((rule) => rule(enclosure, species, standard, facts));
