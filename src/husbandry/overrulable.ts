// Which facts may a shop overrule, and what may stand there? One answer for species, care, and the rows of the lists
// (materials, heaters, thermostats, substrates, prey, law, policies). Leaves out laying a value over (overlay.ts).
import { heaterKinds } from '../physics/enclosure.ts';
import type { Fact, Facts } from './fact.ts';
import { isRecord } from './fact-check.ts';
import { conductivityLimits, densityLimits, type Limits } from './quantities.ts';

export type Part = 'low' | 'high' | 'value' | 'values';
const allParts: readonly Part[] = ['low', 'high', 'value', 'values'];

/** A fact that may be overruled, as the shop sees it. */
export interface Place {
  readonly path: string;
  /** Key with its unit, e.g. "rhPct". */
  readonly key: string;
  readonly fact: Fact;
  readonly parts: readonly Part[];
  /** Words that may stand here; null for numbers and for free text. */
  readonly words: readonly string[] | null;
  /** Words or numbers from careless to careful: a shop may move up only. Null when it is free both ways. */
  readonly careful: readonly (string | number)[] | 'up' | null;
  readonly limits: Limits | undefined;
}

/** What the trade may not loosen: whatever keeps light out of the night, fire out of the box and skin off the heater. */
const carefulWords: Readonly<Record<string, readonly string[]>> = {
  emitsLight: ['no', 'yes'],
  needsGuard: ['no', 'by-temperature', 'yes'],
  holder: ['none', 'ceramic'],
  fit: ['good', 'allowed', 'never'],
};
/** Words that nobody reads but people. */
const freeText: readonly string[] = [
  'cautions',
  'alsoNamed',
  'forCorn',
  'company',
  'bleachPartsPerPart',
  'preySize',
  'captiveBredParasites',
];
/** What the law says of a species is not the shop's to change. */
const never: readonly string[] = ['euAnnex', 'citesAppendix'];

const own = (x: unknown, key: string): unknown => (isRecord(x) && Object.hasOwn(x, key) ? x[key] : undefined);
const at = (x: unknown, keys: readonly string[]): unknown => keys.reduce<unknown>(own, x);

/** Parts of a fact that can be overruled. */
export const partsOf = (fact: Fact): readonly Part[] => allParts.filter((part) => part in fact);

/** The fact at a path that a shop may overrule, or null. */
export function placeOf(facts: Facts, path: string): Place | null {
  const keys = path.split('.');
  const found = factAt(facts, keys);
  const key = keys.at(-1) ?? '';
  if (!isRecord(found) || !('source' in found) || never.includes(key)) return null;
  const fact = found as unknown as Fact;
  const parts = partsOf(fact);
  if (parts.length === 0) return null;
  const lawYears = keys[0] === 'law' && key === 'years';
  const named = keys[2] === 'drives' ? 'fit' : key;
  return {
    path,
    key,
    fact,
    parts,
    words: wordsFor(facts, keys, fact),
    careful: lawYears ? 'up' : (carefulWords[named] ?? null),
    limits: limitsOf(facts, keys),
  };
}

function factAt(facts: Facts, keys: readonly string[]): unknown {
  const [table = '', id = '', key = '', kind = ''] = keys;
  switch (table) {
    case 'species':
      return keys.length === 4 && ['all', 'hatchling', 'young', 'adult'].includes(key) ? at(facts, keys) : undefined;
    case 'care':
      return keys.length === 2 ? at(facts, keys) : undefined;
    case 'prey':
      return keys.length === 3 && key === 'massG' ? at(facts, keys) : undefined;
    case 'materials':
      return keys.length === 3 ? at(facts.materialFacts, [id, 'facts', key]) : undefined;
    case 'heaters':
    case 'substrates':
      return keys.length === 3 ? at(facts, [table, id, 'facts', key]) : undefined;
    case 'thermostats':
      return key === 'drives'
        ? fitOf(facts, id, kind, keys.length)
        : keys.length === 3
          ? at(facts, [table, id, 'facts', key])
          : undefined;
    case 'law':
      return keys.length === 3 ? lawFact(facts, id, key) : undefined;
    case 'policy':
      return keys.length === 2 ? at(facts.policies, [id]) : undefined;
    default:
      return undefined;
  }
}

/** How well a thermostat drives a heater, in the form of a fact. */
function fitOf(facts: Facts, id: string, kind: string, long: number): Fact | undefined {
  const drive = at(facts.thermostats, [id, 'drives', kind]);
  if (long !== 4 || !isRecord(drive)) return undefined;
  const { fit, source, at: place, read } = drive as never;
  return { value: fit, source, at: place, read };
}

/** Of a rule of law a shop may raise the age or the years of keeping, and say when it has looked itself. */
function lawFact(facts: Facts, id: string, key: string): Fact | undefined {
  const rule = facts.law.find((row) => row.id === id);
  if (!rule) return undefined;
  const { source, read, effect } = rule;
  const part = { source, at: rule.at, read };
  if (key === 'years') return 'years' in effect ? { value: effect.years, ...part } : undefined;
  return key === 'reviewBy' || key === 'dateChecked' ? { value: rule[key], ...part } : undefined;
}

function wordsFor(facts: Facts, keys: readonly string[], fact: Fact): readonly string[] | null {
  const key = keys.at(-1) ?? '';
  if (keys[0] === 'policy')
    return fact.value !== undefined && typeof fact.value === 'string' ? Object.keys(facts.standards) : null;
  if (keys[2] === 'drives') return carefulWords.fit ?? null;
  if (key === 'substrates') return Object.keys(facts.substrates).sort();
  const wordy = typeof fact.value === 'string' || fact.values?.some((one) => typeof one === 'string') === true;
  if (!wordy || freeText.includes(key) || keys[0] === 'law') return null;
  const tables =
    keys[0] === 'species'
      ? Object.values(facts.species).flatMap(({ all, hatchling, young, adult }) => [all, hatchling, young, adult])
      : Object.values((facts as unknown as Record<string, object>)[keys[0] ?? ''] ?? {}).map((row) => row.facts ?? {});
  const known = tables.flatMap((table) => [table[key]?.value, ...(table[key]?.values ?? [])]);
  return [...new Set([...known, ...(carefulWords[key] ?? [])].filter((word) => typeof word === 'string'))].sort();
}

function limitsOf(facts: Facts, keys: readonly string[]): Limits | undefined {
  const [table, id = '', key] = keys;
  if (table === 'law') return { low: 1, high: 30 };
  if (table !== 'materials') return undefined;
  const kind = facts.materialFacts[id]?.class ?? '';
  if (key === 'conductivityWPerMK') return conductivityLimits[kind];
  return key === 'densityKgPerM3' ? densityLimits[kind] : undefined;
}

/** What of a branch's values goes into a plan or a proof for this animal in this box: its species at its stage, the
 *  kinds of heater and thermostat and the materials that are in it, care, and the policies of that use. */
export function concerns(
  facts: Facts,
  path: string,
  about: {
    readonly speciesId: string;
    readonly stage: string;
    readonly use: 'plan' | 'proof';
    /** The enclosure as JSON; null when any kit may come into it. */
    readonly enclosure: unknown;
  },
): boolean {
  const [table = '', id = '', stage] = path.split('.');
  if (table === 'species')
    return id === about.speciesId && (stage === 'all' || stage === about.stage || stage === 'adult');
  if (table === 'policy') return facts.policies[id]?.usedIn.includes(about.use) === true;
  if (table === 'law' || table === 'prey') return false;
  if (table === 'care') return true;
  const words = about.enclosure === null ? null : JSON.stringify(about.enclosure);
  return words === null || words.includes(`"${id}"`);
}

/** Every path that a shop may overrule below a list, for the screen that shows it. */
export function pathsOf(
  facts: Facts,
  table: 'materials' | 'heaters' | 'thermostats' | 'substrates' | 'law' | 'policy',
) {
  const rows: readonly (readonly [string, readonly string[]])[] =
    table === 'law'
      ? facts.law.map(({ id }) => [id, ['years', 'reviewBy', 'dateChecked']])
      : table === 'policy'
        ? Object.keys(facts.policies).map((id) => [id, ['']])
        : Object.entries(table === 'materials' ? facts.materialFacts : facts[table]).map(([id, row]) => [
            id,
            [
              ...Object.keys(row?.facts ?? {}),
              ...(table === 'thermostats' ? heaterKinds.map((kind) => `drives.${kind}`) : []),
            ],
          ]);
  return rows.flatMap(([id, keys]) =>
    keys
      .map((key) => [table, id, key].filter((part) => part !== '').join('.'))
      .filter((path) => placeOf(facts, path) !== null),
  );
}
