// A box of the shelf in which the nearest kit does not hold may hold with another: which few kits look right in it, the
// cheapest first, by the best-estimate version alone. Leaves out: whether they hold (judge-home.ts).
import { dialCard } from '../dial/dial-card.ts';
import { enclosureInBox } from '../kit/shelf-box.ts';
import type { ShelfEnclosure } from '../shelf/shelf.ts';
import { heartOf, kitName } from './build-answer.ts';
import { type Change, type HelpInput, homeInBox, spaceLost } from './help-changes.ts';
import { prepareSearch } from './prepare-search.ts';

/** So many kits are tried in one box; our choice. */
export const kitsForBox = 3;

/** No changes where the box is too small for the animal. */
export function otherKitsFor(item: ShelfEnclosure, input: HelpInput): readonly Change[] {
  if (spaceLost(enclosureInBox(input.choice.enclosure, item), input)) return [];
  const { search, solve } = prepareSearch({ ...input, boxIds: [item.id], drawnIsOwned: false });
  for (let task = search.nextTask(); task && !search.hasFirst(); task = search.nextTask())
    search.take(task, solve(task));
  const seen = new Set<string>();
  const first = search.ranking().filter(({ state, kit }) => {
    const heaters = `${kit.heater.id} ${kit.nightHeater?.id ?? ''}`;
    if (state.arrangement.variant.changes.length > 0 || state.arrangement.spot !== 'usual' || seen.has(heaters))
      return false;
    seen.add(heaters);
    return kit.id !== input.choice.id;
  });
  return first.slice(0, kitsForBox).map(({ state, group, kit }): Change => {
    const dial = dialCard(state.surfaces, group.behaviour, []);
    return {
      step: { id: 'box-and-kit', name: item.name, kit: kitName(kit), heart: heartOf(kit) },
      family: 'box',
      graded: false,
      apply: (home) => homeInBox(home, item, { heart: heartOf(kit), dial }, input),
    };
  });
}
