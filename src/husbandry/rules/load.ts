// Is a thermostat asked to carry no more than a safe part of its rating?
// Leaves out: the house wiring, which is an electrician's business.
import { coded } from '../coded.ts';
import { watts } from '../display.ts';
import { policyFact } from '../policy.ts';
import { basisOf, need, type Rule } from '../rule.ts';

/** Heaters together may draw this share of the rating [%] when data/ has no row of it (our choice: a fifth in hand for
 *  switching surges and age). */
export const loadMaxPct = 80;

const say = coded('load', {
  over: (sum: string, most: string, rating: string) =>
    `${sum} hang on a thermostat rated ${rating}; ${most} is as much as it should carry.`,
  most: (most: string, pct: string, rating: string) => `at most ${most} (${pct} % of ${rating})`,
  fine: 'Well within its rating.',
  fix: 'Take a thermostat of a higher rating, or share the heaters between two.',
});

export const loadRule: Rule = (enclosure, _species, _standard, facts) => {
  const { value: mostPct, basis } = policyFact(facts.policies, 'thermostatLoadPct', loadMaxPct);
  return enclosure.thermostats.flatMap((thermostat) => {
    const driven = enclosure.heaters.filter((heater) => heater.thermostatId === thermostat.id);
    if (driven.length === 0) return [];
    const sum = driven.reduce((w, heater) => w + heater.powerW, 0);
    const most = (mostPct / 100) * thermostat.ratingW;
    const over = sum > most + 1e-9;
    return [
      need(
        {
          id: `load-${thermostat.id}`,
          group: 'safety',
          title: 'Load on the thermostat',
          verdict: over ? 'fails' : 'holds',
          wanted: say.most(watts(most), String(mostPct), watts(thermostat.ratingW)),
          found: watts(sum),
          reasons: [over ? say.over(watts(sum), watts(most), watts(thermostat.ratingW)) : say.fine],
          fixes: [say.fix],
        },
        basisOf(basis),
      ),
    ];
  });
};
