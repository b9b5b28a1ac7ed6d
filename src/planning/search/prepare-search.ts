// From what is asked to a search that can be driven: candidates, versions of the box, costs. Threads that only solve
// need none of it (solve-task.ts).

import type { Enclosure } from '../../physics/enclosure.ts';
import { burningHoursPerYear } from '../cost/lamp-life.ts';
import { type LampCost, type WholeLifeCost, wholeLifeCost } from '../cost/whole-life-cost.ts';
import { type YearlyEnergy, yearlyEnergy } from '../cost/yearly-energy.ts';
import { drawMembers } from '../ensemble.ts';
import { variantsOf } from '../kit/box-variant.ts';
import { drawnItems, isDrawn } from '../kit/drawn-items.ts';
import type { Kit } from '../kit/kit.ts';
import { type Candidates, kitCandidates } from '../kit/kit-candidates.ts';
import { type Owned, ownedFrom } from '../kit/owned.ts';
import { enclosureInBox } from '../kit/shelf-box.ts';
import { itemsOf, type Shelf } from '../shelf/shelf.ts';
import { createKitSearch, type KitSearch, type SearchTask } from './kit-search.ts';
import type { SearchInput } from './search-input.ts';
import { settingOf, taskSolver } from './solve-task.ts';
import type { MemberSurface } from './surface.ts';

export interface PreparedSearch {
  readonly candidates: Candidates;
  readonly search: KitSearch;
  readonly solve: (task: SearchTask) => MemberSurface[];
}

export function prepareSearch(input: SearchInput): PreparedSearch {
  const { enclosure, climate, facts } = input;
  const drawn = input.drawnIsOwned ? drawnItems(enclosure) : [];
  const shelf: Shelf = { ...input.shelf, items: [...drawn, ...input.shelf.items] };
  const owned = ownedFrom([...input.ownedIds, ...drawn.map((item) => item.id)]);
  const candidates = kitCandidates({
    enclosure,
    species: input.species,
    facts,
    shelf,
    owned,
    boxes: boxesOf(input, shelf, owned),
  });
  const members = drawMembers(input.priors, Math.max(1, input.members), input.seed);
  const search = createKitSearch({
    climate,
    candidates,
    members,
    pruning: input.pruning ?? true,
    costOf: (kit, behaviour, surface, arrangement) =>
      kitCost(kit, yearlyEnergy(surface, behaviour, arrangement.enclosure), arrangement.enclosure, input).total,
  });
  const solver = taskSolver(settingOf(input));
  const solve = (task: SearchTask): MemberSurface[] =>
    solver(task, search.states[task.arrangement]!.arrangement.enclosure);
  return { candidates, search, solve };
}

/** The box as drawn and its changes, or boxes of the shelf each with theirs. */
function boxesOf(input: SearchInput, shelf: Shelf, ownedThings: Owned) {
  if (input.boxIds.length === 0) return variantsOf(input.enclosure, shelf, ownedThings);
  return itemsOf(shelf, 'enclosure')
    .filter((item) => input.boxIds.includes(item.id))
    .flatMap((item) => {
      const owned = ownedThings.has(item.id);
      const part = {
        itemId: item.id,
        name: item.name,
        role: 'box' as const,
        count: 1,
        price: owned ? 0 : item.price,
        owned,
      };
      return variantsOf(enclosureInBox(input.enclosure, item), shelf, ownedThings, item.id, [part]);
    });
}

/** @param energy of one version of the box */
export function kitCost(
  kit: Kit,
  energy: YearlyEnergy,
  enclosure: Enclosure,
  input: Pick<SearchInput, 'facts' | 'shelf' | 'tariffPerKWh' | 'years'>,
): WholeLifeCost {
  const lamps = lampsOf(kit, energy, enclosure, input);
  return wholeLifeCost(kit.price, lamps, energy.kWh, input.tariffPerKWh, input.years);
}

/** What a new one costs: one that stands in the drawing is replaced by the nearest of its kind on the shelf; 0 where the
 *  shelf has none, and so no price. */
function priceAnew(item: Kit['heater'], shelf: Shelf): number {
  if (!isDrawn(item)) return item.price;
  const apart = (other: Kit['heater']) => Math.abs(other.powerW - item.powerW);
  const like = itemsOf(shelf, 'heater').filter((other) => other.heaterKind === item.heaterKind);
  return like.reduce<Kit['heater'] | null>((a, b) => (a && apart(a) <= apart(b) ? a : b), null)?.price ?? 0;
}

/** Heaters as things that wear out, at what their like costs to buy again. */
function lampsOf(
  kit: Kit,
  energy: YearlyEnergy,
  enclosure: Enclosure,
  { facts, shelf }: Pick<SearchInput, 'facts' | 'shelf'>,
): LampCost[] {
  const dayH = (enclosure.day.endH - enclosure.day.startH + 24) % 24 || 24;
  const life = (kind: Kit['heater']['heaterKind']): number => {
    const value = facts.heaters[kind]?.facts.lifeHours?.value;
    if (typeof value !== 'number') throw new Error(`no life of a ${kind} in the facts`);
    return value;
  };
  const lamp = (item: Kit['heater'], hoursPerYear: number): LampCost => ({
    name: item.name,
    price: priceAnew(item, shelf),
    hoursPerYear,
    lifeH: life(item.heaterKind),
  });
  const { control } = kit.thermostat;
  const byDay = burningHoursPerYear(dayH, energy.dayDutyFrac, control);
  if (kit.nightHeater && kit.nightThermostat)
    return [
      lamp(kit.heater, byDay),
      lamp(kit.nightHeater, burningHoursPerYear(24 - dayH, energy.nightDutyFrac, kit.nightThermostat.control)),
    ];
  return [lamp(kit.heater, byDay + burningHoursPerYear(24 - dayH, energy.nightDutyFrac, control))];
}
