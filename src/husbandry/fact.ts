// What the facts of data/ look like once they are in the program.
// Leaves out: reading the files (records/facts.ts) and checking them (fact-check.ts, facts.ts).
import type { ControlKind, HeaterKind, LifeStage } from '../physics/enclosure.ts';
import type { MaterialTable } from '../physics/material.ts';
import type { Caution, FaultCase, Prey, SubstrateFacts } from './fact-tables.ts';
import type { LawRule } from './law-rule.ts';
import type { Sourced } from './need.ts';
import type { Policy } from './policy.ts';
import type { OwnMark } from './shop-value.ts';
import type { Standard } from './standard.ts';

/** A fact with what other sources say about the same quantity. */
export interface Fact extends Sourced {
  /** Several numbers or words where the fact is a list, e.g. powers that are sold [W]. */
  readonly values?: readonly (number | string)[];
  readonly alternatives?: readonly Sourced[];
  /** Why this one is used although sources disagree. */
  readonly why?: string;
}

export type FactTable = Readonly<Record<string, Fact>>;

/** One row of data/sources.json. */
export interface Source {
  readonly title: string;
  readonly authors?: string;
  readonly year?: number;
  readonly url?: string;
  readonly kind: string;
  /** page: seen in a stored page; memory: quoted without having been seen again. */
  readonly read: 'page' | 'memory';
  readonly howRead?: string;
  /** ISO date. */
  readonly dateChecked?: string;
}

/** One file of data/species/. Facts of a life stage go before those of "all". */
export interface Species extends Readonly<Record<LifeStage, FactTable>> {
  readonly id: string;
  readonly scientificName: string;
  readonly commonName: string;
  readonly family: string;
  readonly all: FactTable;
  readonly notes: readonly string[];
}

export interface MaterialFacts {
  readonly id: string;
  readonly name: string;
  readonly class: string;
  readonly use: readonly string[];
  readonly facts: FactTable;
}

/** One row of data/heaters.json: the facts of a kind of heater, keyed by name with its unit. */
export interface HeaterFacts {
  readonly id: HeaterKind;
  readonly name: string;
  readonly facts: FactTable;
}

/** What a kind of thermostat may drive: well, at a pinch, or never. */
export type Fit = 'good' | 'allowed' | 'never';

export interface ThermostatFacts {
  readonly id: ControlKind;
  readonly name: string;
  readonly drives: Readonly<Record<HeaterKind, { readonly fit: Fit; readonly why: string } & Sourced>>;
  readonly facts: FactTable;
}

/** Everything that data/ says, checked. */
export interface Facts {
  readonly sources: Readonly<Record<string, Source>>;
  readonly species: Readonly<Record<string, Species>>;
  /** As physics is handed them. */
  readonly materials: MaterialTable;
  /** The same with sources. */
  readonly materialFacts: Readonly<Record<string, MaterialFacts>>;
  readonly heaters: Readonly<Partial<Record<HeaterKind, HeaterFacts>>>;
  readonly thermostats: Readonly<Partial<Record<ControlKind, ThermostatFacts>>>;
  readonly substrates: Readonly<Record<string, SubstrateFacts>>;
  readonly prey: Readonly<Record<string, Prey>>;
  readonly standards: Readonly<Record<string, Standard>>;
  readonly law: readonly LawRule[];
  readonly cautions: readonly Caution[];
  readonly faultCases: readonly FaultCase[];
  /** Cleaning, water, handling and other facts that hold for all species. */
  readonly care: FactTable;
  readonly policies: Readonly<Record<string, Policy>>;
  /** The shop's own values that were laid over. */
  readonly overlaid: readonly OwnMark[];
}
