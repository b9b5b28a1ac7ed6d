// From the raw JSON of the animal's own tables to checked facts: bad rows are dropped and named.
// Leaves out reading files (records/animal-facts.ts) and species, prey and law (husbandry/facts.ts).
import type { Fact, FactTable } from '../husbandry/fact.ts';
import { type CheckContext, dataFault, goodFacts, isRecord, sourceFaults } from '../husbandry/fact-check.ts';
import type { Place } from '../husbandry/law-rule.ts';
import type { Sourced } from '../husbandry/need.ts';
import { rangeOfFact } from '../husbandry/species-facts.ts';
import type { Fault } from '../shared/fault.ts';
import type { ExaminationStep } from './examination.ts';
import type { RegisterHeading } from './register.ts';
import type { LengthMassFit } from './size-check.ts';
import type { TriageFacts } from './triage.ts';

/** A text in every language that the program speaks. */
export interface Spoken {
  readonly en: string;
  readonly de: string;
}

/** A heading of the written information that goes with an animal: one row of data/care-headings.json. */
export interface CareHeading extends Sourced {
  readonly id: string;
  readonly say: Spoken;
  /** Parts of the pack where it stands. */
  readonly parts: readonly string[];
  /** Places whose law asks for it. */
  readonly laws: Readonly<Partial<Record<Place, Sourced>>>;
}

export interface CareFacts {
  readonly feeding: FactTable;
  readonly quarantine: FactTable;
  readonly condition: FactTable;
  readonly growth: FactTable;
  readonly aftercare: FactTable;
  readonly examination: readonly ExaminationStep[];
  readonly lengthMass: readonly LengthMassFit[];
  readonly register: readonly RegisterHeading[];
  readonly triage: TriageFacts;
  readonly careHeadings: readonly CareHeading[];
}

export const careFiles = [
  'feeding.json',
  'quarantine.json',
  'condition.json',
  'growth.json',
  'aftercare.json',
  'examination.json',
  'length-mass.json',
  'register.json',
  'triage.json',
  'care-headings.json',
] as const;

/** The one number of a fact: its value, else the middle of its range. Throws when data/ lacks it: our own bug. */
export function numberOf(table: FactTable, key: string): number {
  const range = rangeOfFact(table[key]);
  if (range === null) throw new Error(`data/ has no number "${key}"`);
  return typeof range.value === 'number' ? range.value : (range.low + range.high) / 2;
}

/** The fact itself, for its source. */
export function factIn(table: FactTable, key: string): Fact {
  const fact = table[key];
  if (fact === undefined) throw new Error(`data/ has no fact "${key}"`);
  return fact;
}

/** Every part of `x` that should be sourced or spoken, wherever it lies. */
function treeFaults(ctx: CheckContext, at: string, x: unknown): Fault[] {
  if (Array.isArray(x)) return x.flatMap((item, i) => treeFaults(ctx, `${at}[${i}]`, item));
  if (!isRecord(x)) return [];
  const own: Fault[] = 'source' in x || 'read' in x ? sourceFaults(ctx, at, x) : [];
  if ('en' in x || 'de' in x)
    for (const language of ['en', 'de'])
      if (typeof x[language] !== 'string' || x[language] === '')
        own.push(dataFault(ctx, at, 'DATA_FORM', x[language], 'a text in each language', `No text in "${language}".`));
  return [
    ...own,
    ...Object.entries(x).flatMap(([key, part]) => treeFaults(ctx, at === '' ? key : `${at}.${key}`, part)),
  ];
}

/** @param raw file name -> parsed JSON  @param sourceKeys keys of sources.json */
export function careFactsFrom(
  raw: Readonly<Record<string, unknown>>,
  sourceKeys: ReadonlySet<string>,
): { readonly facts: CareFacts; readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const context = (file: string): CheckContext => ({ file, sourceKeys });
  const table = (file: string): FactTable => {
    const found = goodFacts(context(file), '', raw[file]);
    faults.push(...found.faults);
    return found.facts;
  };
  const list = <T>(file: string): readonly T[] => {
    const rows = raw[file];
    if (!Array.isArray(rows)) {
      faults.push(dataFault(context(file), '', 'DATA_FORM', rows, 'a list of rows', 'Not a list.'));
      return [];
    }
    faults.push(...treeFaults(context(file), '', rows));
    return rows as readonly T[];
  };
  faults.push(...treeFaults(context('triage.json'), '', raw['triage.json']));
  return {
    facts: {
      feeding: table('feeding.json'),
      quarantine: table('quarantine.json'),
      condition: table('condition.json'),
      growth: table('growth.json'),
      aftercare: table('aftercare.json'),
      examination: list<ExaminationStep>('examination.json'),
      lengthMass: list<LengthMassFit & Sourced>('length-mass.json'),
      register: list<RegisterHeading>('register.json'),
      triage: raw['triage.json'] as TriageFacts,
      careHeadings: list<CareHeading>('care-headings.json'),
    },
    faults,
  };
}
