// Part 12: the sources in the order in which the pages cite them.
import type { Facts } from '../../husbandry/fact.ts';
import type { Block } from './blocks.ts';
import type { Tongue } from './tongue.ts';

export function allSources(
  cited: readonly string[],
  sources: Facts['sources'],
  { w, day, typed }: Tongue,
): Extract<Block, { kind: 'sources' }> {
  const items = cited.map((key, index) => {
    const source = sources[key];
    const says = [
      source?.authors,
      w.sources.ours[key] ?? source?.title ?? key,
      source?.year === undefined ? undefined : String(source.year),
      source?.read === 'page'
        ? source.dateChecked
          ? w.sources.checked(day(source.dateChecked))
          : undefined
        : w.sources.memory,
    ].filter((part): part is string => part !== undefined && part !== '');
    return `[${index + 1}] ${typed(says.join(', '))}`;
  });
  return { kind: 'sources', items, note: w.sources.note };
}
