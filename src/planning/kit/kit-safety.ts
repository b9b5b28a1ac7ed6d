// May this kit be used at all? The rules of husbandry that concern heat, run on the home as it would stand.
// Leaves out: rules about the box and the animal that no heater changes (space, hides, lock).
import type { Facts, Species } from '../../husbandry/fact.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Rule } from '../../husbandry/rule.ts';
import { beginningsRule } from '../../husbandry/rules/beginnings.ts';
import { heatersRule } from '../../husbandry/rules/heaters.ts';
import { loadRule } from '../../husbandry/rules/load.ts';
import { probeRule } from '../../husbandry/rules/probe.ts';
import { substrateRule } from '../../husbandry/rules/substrate.ts';
import { thermometersRule } from '../../husbandry/rules/thermometers.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import { needRefusal, type RefusalSays } from './refusal.ts';

/** In the order in which they are told; the load alone looks at watts and rating. */
const beforeLoad: readonly Rule[] = [heatersRule];
const afterLoad: readonly Rule[] = [probeRule, thermometersRule, beginningsRule, substrateRule];

export type Fit = 'good' | 'allowed';

/** What the rules say of heaters of a kind on thermostats of a kind, whatever their watts. */
export interface KindStanding {
  readonly before: RefusalSays | null;
  readonly after: RefusalSays | null;
  readonly fit: Fit;
}

const decides = (n: NeedVerdict): boolean => n.group === 'safety' || n.id === 'mat-alone';

function firstBroken(rules: readonly Rule[], enclosure: Enclosure, species: Species, facts: Facts): RefusalSays | null {
  for (const rule of rules) {
    const bad = rule(enclosure, species, null, facts).find((n) => decides(n) && n.verdict !== 'holds');
    if (bad) return needRefusal(bad);
  }
  return null;
}

/** @param enclosure the home with the kit in it; its watts and ratings are not looked at */
export function kindStanding(enclosure: Enclosure, species: Species, facts: Facts): KindStanding {
  const fits = enclosure.heaters.map((heater) => {
    const thermostat = enclosure.thermostats.find((t) => t.id === heater.thermostatId);
    return thermostat ? facts.thermostats[thermostat.control]?.drives[heater.kind].fit : undefined;
  });
  return {
    before: firstBroken(beforeLoad, enclosure, species, facts),
    after: firstBroken(afterLoad, enclosure, species, facts),
    fit: fits.every((fit) => fit === 'good') ? 'good' : 'allowed',
  };
}

export const loadRefusal = (enclosure: Enclosure, species: Species, facts: Facts): RefusalSays | null =>
  firstBroken([loadRule], enclosure, species, facts);

/** How well thermostats suit their heaters, else why the kit may not be used. */
export function kitRefusal(enclosure: Enclosure, species: Species, facts: Facts): Fit | RefusalSays {
  const { before, after, fit } = kindStanding(enclosure, species, facts);
  return before ?? loadRefusal(enclosure, species, facts) ?? after ?? fit;
}
