// Are temperatures read by instruments that are not the thermostat: at the basking site and at the cool end?
// Leaves out: whether the instruments are right (proving).

import type { Thermometer } from '../../physics/enclosure.ts';
import { coded } from '../coded.ts';
import { type Basis, commonPractice, need, type Rule } from '../rule.ts';

const say = coded('thermometers', {
  missing: (where: string) => `Nothing reads the temperature at the ${where}.`,
  dial: (where: string) => `Only a stick-on dial reads the ${where}; it shows the wall behind it, several degrees off.`,
  good: (where: string) => `Read at the ${where}, apart from the thermostat.`,
  want: 'a digital probe or an infrared thermometer',
  noneFound: 'none',
  fix: (where: string) => `Put a digital probe at the ${where}, or read its surface with an infrared thermometer.`,
});

const kindWords: Readonly<Record<Thermometer['kind'], string>> = {
  'digital-probe': 'digital probe',
  'infrared-gun': 'infrared thermometer',
  'stick-on-dial': 'stick-on dial',
};

const names = coded('name', { thermometers: (_kinds: string, written: string) => written });

const bothEnds: Basis = { source: 'VETREF-HOUSING', read: 'page' };

function readAt(thermometers: readonly Thermometer[], place: Thermometer['place'], where: string, basis: Basis) {
  const here = thermometers.filter((t) => t.place === place);
  const sound = here.some((t) => t.kind !== 'stick-on-dial');
  const reason = sound ? say.good(where) : here.length > 0 ? say.dial(where) : say.missing(where);
  return need(
    {
      id: `thermometer-${place}`,
      group: 'safety',
      title: `A thermometer at the ${where}`,
      verdict: sound ? 'holds' : 'fails',
      wanted: say.want,
      found:
        here.length > 0
          ? names.thermometers(here.map((t) => t.kind).join(' '), here.map((t) => kindWords[t.kind]).join(', '))
          : say.noneFound,
      reasons: [reason],
      fixes: [say.fix(where)],
    },
    basis,
  );
}

export const thermometersRule: Rule = (enclosure) => [
  readAt(enclosure.thermometers, 'basking', 'basking site', commonPractice),
  readAt(enclosure.thermometers, 'cool-end', 'cool end', bothEnds),
];
