// May this kit be used at all? The rules of husbandry that concern heat, run on the home as it would stand.
// Leaves out: rules about the box and the animal that no heater changes (space, hides, lock).
import type { Facts, Species } from '../../husbandry/fact.ts';
import type { NeedVerdict } from '../../husbandry/need.ts';
import { beginningsRule } from '../../husbandry/rules/beginnings.ts';
import { heatersRule } from '../../husbandry/rules/heaters.ts';
import { loadRule } from '../../husbandry/rules/load.ts';
import { probeRule } from '../../husbandry/rules/probe.ts';
import { substrateRule } from '../../husbandry/rules/substrate.ts';
import { thermometersRule } from '../../husbandry/rules/thermometers.ts';
import type { Enclosure } from '../../physics/enclosure.ts';

const heatRules = [heatersRule, loadRule, probeRule, thermometersRule, beginningsRule, substrateRule];

const decides = (n: NeedVerdict): boolean => n.group === 'safety' || n.id === 'mat-alone';

/** "good" or "allowed" (how well thermostats suit their heaters), else the sentence of the rule that forbids the kit. */
export function kitRefusal(enclosure: Enclosure, species: Species, facts: Facts): string {
  const needs = heatRules.flatMap((rule) => rule(enclosure, species, null, facts)).filter(decides);
  const bad = needs.find((n) => n.verdict !== 'holds');
  if (bad) return `${bad.title}: ${plain(bad.reasons[0] ?? '')}`;
  const fits = enclosure.heaters.map((heater) => {
    const thermostat = enclosure.thermostats.find((t) => t.id === heater.thermostatId);
    return thermostat ? facts.thermostats[thermostat.control]?.drives[heater.kind].fit : undefined;
  });
  return fits.every((fit) => fit === 'good') ? 'good' : 'allowed';
}

/** The same sentence for heaters and loads of every size, so that refusals can be counted together. */
const plain = (text: string): string => text.replace(/\s*\(\d+ W\)/g, '').replace(/\d+ W/g, '… W');
