// Part 5: cleaning, water, humidity, handling, company, and what is looked at in the kit.
import { rangeOf, rangeOfFact } from '../../../husbandry/species-facts.ts';
import type { Block } from '../blocks.ts';
import type { PackFigures } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';
import type { Tongue } from '../tongue.ts';

const common = { source: 'COMMON' } as const;

export function carePart(
  { facts, care, animal }: PackSubject,
  { climate }: PackFigures,
  tongue: Tongue,
): readonly Block[] {
  const { w, m, cite } = tongue;
  const table = facts.care;
  const number = (key: string, end: 'low' | 'high'): string => {
    const range = rangeOfFact(table[key]);
    return range === null ? w.notKnown : m.number(range[end], 0);
  };
  const cited = (...keys: readonly string[]): string => cite(...keys.flatMap((key) => table[key] ?? []));
  const slough = animal.stage === null ? null : rangeOf(animal.species, animal.stage, 'rhSloughPct');
  const damp = [
    `${w.care.dampIs(m.span('percent', climate.rhPct.low, climate.rhPct.high))}${cite(climate.rhPct)}`,
    ...(slough ? [`${w.care.dampSlough(m.span('percent', slough.low, slough.high))}${cite(slough)}`] : []),
  ].join('; ');
  const [bleach, water] = bleachParts(table.bleachPartsPerPart?.value);
  const company = animal.species.all.company;
  const items: (readonly [string, string])[] = [
    [w.care.daily, `${w.care.dailyIs}${cited('waterDays', 'spotCleanDays')}`],
    [
      w.care.full,
      `${w.care.fullIs(number('fullCleanDays', 'low'), number('fullCleanDays', 'high'))}${cited('fullCleanDays')}`,
    ],
    ...(bleach && water
      ? [[w.care.disinfect, `${w.care.disinfectIs(bleach, water)}${cited('bleachPartsPerPart')}`] as const]
      : []),
    [w.care.damp, damp],
    [
      w.care.handling,
      `${w.care.handlingIs(
        number('handlingAfterArrivalDays', 'low'),
        number('handlingAfterArrivalDays', 'high'),
        m.number(Number(care.feeding.handlingRestHours?.value), 0),
      )}${cited('handlingAfterArrivalDays', 'handlingAfterMealHours')}`,
    ],
    [w.care.company, `${w.care.companyIs}${company ? cite(company) : ''}`],
    [w.care.enrich, `${w.care.enrichIs}${cite(common)}`],
    [w.care.kit, `${w.care.kitIs}${cite(common)}`],
    [
      w.care.year,
      `${w.care.yearIs}${care.aftercare.instrumentCheckDays ? cite(care.aftercare.instrumentCheckDays) : ''}`,
    ],
  ];
  return [{ kind: 'list', items: items.map(([lead, said]) => ({ lead, text: said })) }];
}

/** "1 part household bleach to 9 parts water ..." to its two numbers, as data/care.json words it. */
const bleachParts = (value: unknown): readonly string[] =>
  typeof value === 'string' ? (value.match(/\d+(?= parts?)/g) ?? []).slice(0, 2) : [];
