// The daily round: which enclosures are done, which stand out, which were missed? One tap says "well".
// Leaves out how checks come in from a phone that was offline (desk/daily-round.ts merges them).
import type { Species } from '../husbandry/fact.ts';
import { rangeOf } from '../husbandry/species-facts.ts';
import { daysBetween, type IsoDate } from './calendar.ts';
import { type AnimalEvent, eventsOf } from './event.ts';
import { type Reason, reason } from './reason.ts';

export interface RoundAnimal {
  readonly animalId: string;
  readonly callName: string;
  readonly place: string;
  readonly species: Species;
  readonly arrivedOn: IsoDate | null;
  readonly events: readonly AnimalEvent[];
}

export type RoundState = 'to-do' | 'well' | 'stands-out';

export interface RoundLine {
  readonly place: string;
  readonly animals: readonly { readonly animalId: string; readonly callName: string; readonly speciesId: string }[];
  readonly state: RoundState;
  readonly lastOn: IsoDate | null;
  /** Days without a check before today; 0 when yesterday was done. */
  readonly missedDays: number;
  readonly reasons: readonly Reason[];
}

/** One line an enclosure, in the order of the rack ("A2" before "A10"). */
export function roundLines(animals: readonly RoundAnimal[], today: IsoDate): readonly RoundLine[] {
  const byPlace = new Map<string, RoundAnimal[]>();
  for (const animal of animals) byPlace.set(animal.place, [...(byPlace.get(animal.place) ?? []), animal]);
  const collator = new Intl.Collator('en', { numeric: true });
  return [...byPlace].sort(([a], [b]) => collator.compare(a, b)).map(([place, inIt]) => lineOf(place, inIt, today));
}

function lineOf(place: string, animals: readonly RoundAnimal[], today: IsoDate): RoundLine {
  const checks = animals.map((animal) => ({
    animal,
    check: eventsOf(animal.events, 'round')
      .filter(({ on }) => on <= today)
      .at(-1),
  }));
  const days = checks.map(({ check }) => check?.on ?? null);
  // An enclosure is done when every animal in it is; its last day is that of the one looked at longest ago.
  const lastOn = days.includes(null) ? null : (days.sort().at(0) ?? null);
  const done = lastOn === today;
  const reasons = checks.flatMap(({ animal, check }) => (check?.on === today ? exceptionsOf(animal, check.body) : []));
  const since =
    lastOn ??
    animals
      .map((animal) => animal.arrivedOn)
      .filter((day) => day !== null)
      .sort()
      .at(0) ??
    today;
  // The day it came, or was last looked at, and today do not count.
  const unseen = Math.max(0, daysBetween(since, today) - 1);
  return {
    place,
    animals: animals.map(({ animalId, callName, species }) => ({ animalId, callName, speciesId: species.id })),
    state: !done ? 'to-do' : reasons.length > 0 ? 'stands-out' : 'well',
    lastOn,
    missedDays: done ? 0 : unseen,
    reasons,
  };
}

/** What stands out in one check. Temperatures and humidity are held against the needs of the species. */
export function exceptionsOf(
  animal: Pick<RoundAnimal, 'species'>,
  check: Extract<AnimalEvent, { readonly kind: 'round' }>['body'],
): readonly Reason[] {
  const reasons: Reason[] = [];
  if (check.state === 'not-seen') reasons.push(reason('round.notSeen'));
  if (check.state === 'look') reasons.push(reason('round.look', { note: check.note }));
  if (!check.locked) reasons.push(reason('round.unlocked'));
  if (!check.water) reasons.push(reason('round.noWater'));
  const held = (value: number | null, key: 'warmAirC' | 'coolAirC' | 'rhPct') => {
    const range = rangeOf(animal.species, 'adult', key);
    if (value === null || range === null || (value >= range.low && value <= range.high)) return;
    const side = value < range.low ? 'low' : 'high';
    reasons.push(reason(`round.${key}.${side}`, { value, low: range.low, high: range.high }));
  };
  held(check.warmC, 'warmAirC');
  held(check.coolC, 'coolAirC');
  held(check.rhPct, 'rhPct');
  return reasons;
}

export interface RoundSum {
  readonly enclosures: number;
  readonly done: number;
  readonly standOut: number;
  readonly missed: number;
}

export const roundSum = (lines: readonly RoundLine[]): RoundSum => ({
  enclosures: lines.length,
  done: lines.filter((line) => line.state !== 'to-do').length,
  standOut: lines.filter((line) => line.state === 'stands-out').length,
  missed: lines.filter((line) => line.missedDays > 0).length,
});
