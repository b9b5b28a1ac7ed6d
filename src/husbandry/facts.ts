// From the raw JSON of data/ to checked facts: a bad row is dropped and named, the rest still serves.
// Leaves out: reading files (records/facts.ts) and whether rules of law are stale (law-checks.ts).
import type { Fault } from '../shared/fault.ts';
import type { Facts, HeaterFacts, Source, Species, ThermostatFacts } from './fact.ts';
import { type CheckContext, dataFault, goodFacts, isRecord, sourceFaults } from './fact-check.ts';
import { heaterFrom, materialFrom, type Rows, rowsFrom, thermostatFrom } from './facts-kit.ts';
import { lawRuleFrom, standardFrom } from './facts-rules.ts';
import { speciesFrom } from './facts-species.ts';
import { cautionFrom, faultCaseFrom, preyFrom, substrateFrom } from './facts-tables.ts';
import { policyFrom } from './policy.ts';

/** Path below data/ -> parsed JSON. A leading ".../data/" of any kind is taken off. */
export type RawFacts = Readonly<Record<string, unknown>>;

export interface CheckedFacts {
  readonly facts: Facts;
  readonly faults: readonly Fault[];
}

const byId = <T extends { readonly id: string }>(rows: readonly T[]): Readonly<Record<string, T>> =>
  Object.fromEntries(rows.map((row) => [row.id, row]));

function sourcesFrom(x: unknown): {
  readonly sources: Readonly<Record<string, Source>>;
  readonly faults: readonly Fault[];
} {
  const ctx = { file: 'sources.json', sourceKeys: new Set<string>() };
  if (!isRecord(x))
    return { sources: {}, faults: [dataFault(ctx, '', 'DATA_FORM', x, 'an object by key', 'No sources.')] };
  const sources: Record<string, Source> = {};
  const faults: Fault[] = [];
  for (const [key, row] of Object.entries(x)) {
    if (
      isRecord(row) &&
      typeof row.title === 'string' &&
      typeof row.kind === 'string' &&
      ['page', 'memory'].includes(String(row.read))
    )
      sources[key] = row as unknown as Source;
    else faults.push(dataFault(ctx, key, 'DATA_FORM', row, 'title, kind and read', 'The source is not whole.'));
  }
  return { sources, faults };
}

/** Everything in data/ that is sound, and every complaint about the rest.
 *  @param raw path below data/ -> parsed JSON, e.g. "species/corn.json" */
export function factsFrom(raw: RawFacts): CheckedFacts {
  const files = Object.fromEntries(
    Object.entries(raw).map(([path, json]) => [path.replace(/^(.*\/)?data\//, ''), json]),
  );
  const { sources, faults: badSources } = sourcesFrom(files['sources.json']);
  const faults: Fault[] = [...badSources];
  const context = (file: string): CheckContext => ({ file, sourceKeys: new Set(Object.keys(sources)) });
  const table = <T extends { readonly id: string }>(
    file: string,
    parse: (ctx: CheckContext, at: string, row: Readonly<Record<string, unknown>>) => Rows<T>,
  ): readonly T[] => {
    const found = rowsFrom(context(file), files[file] ?? [], parse);
    faults.push(...found.faults);
    return found.rows;
  };
  const species: Species[] = [];
  for (const [path, json] of Object.entries(files)) {
    if (!path.startsWith('species/')) continue;
    const found = speciesFrom(context(path), json);
    faults.push(...found.faults);
    if (found.species) species.push(found.species);
  }
  const care = goodFacts(context('care.json'), '', files['care.json'] ?? {});
  faults.push(...care.faults);
  const materials = table('materials.json', materialFrom);
  const heaters: readonly HeaterFacts[] = table('heaters.json', heaterFrom);
  const thermostats: readonly ThermostatFacts[] = table('thermostats.json', thermostatFrom);
  const facts: Facts = {
    sources,
    species: byId(species),
    materials: Object.fromEntries(materials.map((row) => [row.id, row.material])),
    materialFacts: byId(materials),
    heaters: byId(heaters),
    thermostats: byId(thermostats),
    substrates: byId(table('substrates.json', substrateFrom)),
    prey: byId(table('prey.json', preyFrom)),
    standards: byId(table('standards.json', standardFrom)),
    law: table('law.json', lawRuleFrom),
    cautions: table('cautions.json', cautionFrom),
    faultCases: table('faults.json', faultCaseFrom),
    care: care.facts,
    policies: byId(table('policies.json', policyFrom)),
    overlaid: [],
  };
  faults.push(...crossFaults(facts, context), ...otherSources(files, context));
  return { facts, faults };
}

const ownFiles = [
  'sources',
  'materials',
  'heaters',
  'thermostats',
  'substrates',
  'prey',
  'standards',
  'law',
  'cautions',
  'faults',
  'care',
  'policies',
];

/** Tables that belong to other rooms are not read here, but their sources must stand in sources.json too. */
function otherSources(files: RawFacts, context: (file: string) => CheckContext): Fault[] {
  const walk = (file: string, x: unknown, at: string): Fault[] => {
    if (Array.isArray(x)) return x.flatMap((row, i) => walk(file, row, `${at}[${nameOf(row, i)}]`));
    if (!isRecord(x)) return [];
    const own = 'source' in x && 'read' in x ? sourceFaults(context(file), at, x) : [];
    return [
      ...own,
      ...Object.entries(x).flatMap(([key, below]) => walk(file, below, at === '' ? key : `${at}.${key}`)),
    ];
  };
  return Object.entries(files)
    .filter(([path]) => !path.startsWith('species/') && !path.startsWith('examples/'))
    .filter(([path]) => !ownFiles.includes(path.replace('.json', '')))
    .flatMap(([path, json]) => walk(path, json, ''));
}

const nameOf = (row: unknown, i: number): string => (isRecord(row) ? String(row.id ?? row.name ?? i) : String(i));

/** Rows that name something that is not there. */
function crossFaults(facts: Facts, context: (file: string) => CheckContext): Fault[] {
  const faults: Fault[] = [];
  const need = (file: string, key: string, id: string, table: Readonly<Record<string, unknown>>, what: string) => {
    if (!(id in table))
      faults.push(dataFault(context(file), key, 'DATA_LINK', id, `an id of ${what}`, `${what} does not hold "${id}".`));
  };
  for (const s of Object.values(facts.species)) {
    const wanted = s.all.substrates?.values ?? [];
    for (const id of wanted)
      need(`species/${s.id}.json`, 'all.substrates', String(id), facts.substrates, 'substrates.json');
  }
  for (const id of Object.keys(facts.substrates)) need('substrates.json', id, id, facts.materials, 'materials.json');
  for (const standard of Object.values(facts.standards))
    for (const id of standard.replaces ?? [])
      need('standards.json', `${standard.id}.replaces`, id, facts.standards, 'standards.json');
  for (const standard of Object.values(facts.standards))
    for (const id of standard.speciesIds ?? [])
      need('standards.json', `${standard.id}.speciesIds`, id, facts.species, 'species/');
  for (const policy of Object.values(facts.policies))
    if (policy.kind === 'standard')
      need('policies.json', policy.id, String(policy.value), facts.standards, 'standards.json');
  for (const rule of facts.law) {
    const ids = 'speciesIds' in rule.effect ? (rule.effect.speciesIds ?? []) : [];
    for (const id of ids) need('law.json', `${rule.id}.effect`, id, facts.species, 'species/');
  }
  return faults;
}
