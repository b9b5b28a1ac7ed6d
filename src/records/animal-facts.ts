// Reads the animal's own tables of data/ and hands them to the pure check. Leaves out what is right (animal/care-facts.ts).
import { join } from 'node:path';
import { type CareFacts, careFactsFrom } from '../animal/care-facts.ts';
import type { Facts } from '../husbandry/fact.ts';
import type { Fault } from '../shared/fault.ts';
import { loadFacts, readRawFacts } from './facts.ts';
import { programRoot } from './root.ts';

export function loadCareFacts(folder = join(programRoot(), 'data')): {
  readonly facts: CareFacts;
  readonly faults: readonly Fault[];
} {
  const { raw, faults } = readRawFacts(folder);
  const sources = raw['sources.json'];
  const keys = new Set(typeof sources === 'object' && sources !== null ? Object.keys(sources) : []);
  const checked = careFactsFrom(raw, keys);
  return { facts: checked.facts, faults: [...faults, ...checked.faults] };
}

export interface AllFacts {
  readonly care: CareFacts;
  readonly facts: Facts;
  /** Rows that are not sound and were left out, each with its file and key. */
  readonly leftOut: readonly Fault[];
}

let known: AllFacts | undefined;

/** Everything that data/ says about animals, read once in a process. */
export function allFacts(): AllFacts {
  known ??= readAll();
  return known;
}

function readAll(): AllFacts {
  const care = loadCareFacts();
  const checked = loadFacts(join(programRoot(), 'data'));
  const places = new Map([...checked.faults, ...care.faults].map((fault) => [`${fault.code} ${fault.field}`, fault]));
  return { care: care.facts, facts: checked.facts, leftOut: [...places.values()] };
}
