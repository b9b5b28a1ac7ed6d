// What a search is asked: the home, the animal, the shelf, what the customer has, the price of power, and for how long.
import type { ClimateNeeds } from '../../husbandry/climate.ts';
import type { Facts, Species } from '../../husbandry/fact.ts';
import type { Standard } from '../../husbandry/standard.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Priors } from '../ensemble.ts';
import type { Shelf } from '../shelf/shelf.ts';

export interface SearchInput {
  /** The box as drawn; its own heaters and thermostats are looked at only as things already owned. */
  readonly enclosure: Enclosure;
  readonly climate: ClimateNeeds;
  readonly species: Species;
  readonly standard: Standard | null;
  readonly facts: Facts;
  readonly priors: Priors;
  readonly shelf: Shelf;
  /** Ids of shelf items that the customer has already; an id named twice stands for two pieces. */
  readonly ownedIds: readonly string[];
  /** Heaters and thermostats in the drawing count as the customer's own. */
  readonly drawnIsOwned: boolean;
  /** Boxes of the shelf to choose from; empty = the box as drawn. */
  readonly boxIds: readonly string[];
  readonly members: number;
  readonly seed: number;
  /** Price of a kWh in the shelf's currency; the user's own. */
  readonly tariffPerKWh: number;
  readonly years: number;
  /** false tries every kit to the end; only to compare with. */
  readonly pruning?: boolean;
}

export const usualYears = 5;
/** GB unit rate, January to March 2025 [GBP/kWh]; shown with its date, to be replaced by the user's own. */
export const usualTariff = {
  perKWh: 0.2486,
  currency: 'GBP',
  source: 'GB-UNIT-RATE',
  at: 'January to March 2025',
} as const;
