// Lays a shop's own values over the facts, and marks each so that it is shown as the shop's, not as the source's.
// The one way for every door: desk, browser, terminal. Leaves out who may set one (desk) and where they are kept (records).
import type { Fault } from '../shared/fault.ts';
import type { Fact, Facts, MaterialFacts } from './fact.ts';
import { type CheckContext, dataFault, factFaults, isRecord } from './fact-check.ts';
import { speciesFrom } from './facts-species.ts';
import { overlayFaults } from './overlay-faults.ts';
import { type Place, placeOf } from './overrulable.ts';
import { policyRefusal } from './policy.ts';
import type { OwnMark, ShopParts, ShopValue } from './shop-value.ts';

export interface LaidOver {
  readonly facts: Facts;
  readonly faults: readonly Fault[];
}

type Tree = Readonly<Record<string, unknown>>;

/** Every complaint about one shop value, as the facts would stand with it. */
export function shopValueFaults(facts: Facts, one: Omit<ShopValue, 'was'>): readonly Fault[] {
  const place = placeOf(facts, one.path);
  if (place === null) return [overlayFaults.fact(one.path)];
  const shape = shapeFaults(facts, place, one.value);
  if (shape.length > 0) return shape;
  const changed = factFaultsOf(facts, place, one.value);
  return changed.length > 0 ? changed : contradictions(laid(facts, place, one), one.path);
}

/** One shop value over the facts; refused whole and named when it cannot be. */
export function layOver(facts: Facts, one: Omit<ShopValue, 'was'> & Partial<Pick<ShopValue, 'was'>>): LaidOver {
  const signed = one.by !== '' && one.why.trim() !== '' && /^\d{4}-\d{2}-\d{2}/.test(one.at);
  const faults = [
    ...(signed ? [] : [overlayFaults.unsigned(one.path)]),
    ...shopValueFaults(facts, one).map((fault) => ({ ...fault, field: one.path })),
  ];
  const place = placeOf(facts, one.path);
  return faults.length > 0 || place === null ? { facts, faults } : { facts: laid(facts, place, one), faults };
}

/** Shop values over the facts, one after the other; one that no longer fits the shipped facts is left out and named. */
export function withShopValues(shipped: Facts, values: readonly ShopValue[]): LaidOver {
  let facts = shipped;
  const faults: Fault[] = [];
  for (const value of values) {
    // Policies that stand in tables of other rooms (what a release asks) are theirs to read.
    if (isForeignPolicy(shipped, value.path)) continue;
    const next = layOver(facts, value);
    facts = next.facts;
    faults.push(...next.faults);
  }
  return { facts, faults };
}

const isForeignPolicy = (facts: Facts, path: string): boolean =>
  path.startsWith('policy.') &&
  !Object.hasOwn(facts.policies, path.slice('policy.'.length)) &&
  path.split('.').length > 2;

/** Shop values below a path, for printing beside what was computed from them. */
export const overlaidBelow = (facts: Facts, path: string): readonly OwnMark[] =>
  facts.overlaid.filter((o) => o.path === path || o.path.startsWith(`${path}.`));

function shapeFaults(facts: Facts, place: Place, value: ShopParts): readonly Fault[] {
  const [got, wanted] = [Object.keys(value).sort(), [...place.parts].sort()];
  if (got.join() !== wanted.join()) return [overlayFaults.parts(place.path, got, wanted)];
  if (place.path.startsWith('policy.')) {
    const policy = facts.policies[place.key];
    const allowed = policy ? policyRefusal(policy, value.value, Object.keys(facts.standards)) : '';
    if (allowed === null) return [];
    const say = policy?.kind === 'standard' ? overlayFaults.word : overlayFaults.policy;
    return [say(place.path, String(value.value), allowed)];
  }
  const { words } = place;
  const given = [value.value, ...(Array.isArray(value.values) ? value.values : [])].filter((one) => one !== undefined);
  if (Array.isArray(value.values) && value.values.length === 0) return [overlayFaults.empty(place.path)];
  if (words) {
    const unknown = given.filter((one) => !words.includes(String(one)));
    if (unknown.length > 0) return unknown.map((one) => overlayFaults.word(place.path, String(one), words.join(', ')));
  }
  return looser(place, value);
}

/** A shop may be more careful than the shipped value, never less. */
function looser(place: Place, value: ShopParts): readonly Fault[] {
  const { careful, fact, path } = place;
  const [was, got] = [fact.value, value.value];
  if (careful === null) return [];
  if (careful === 'up')
    return typeof got === 'number' && typeof was === 'number' && got < was
      ? [overlayFaults.looser(path, String(got), `${was} or more`)]
      : [];
  const least = careful.indexOf(was as string);
  return careful.indexOf(got as string) < least
    ? [overlayFaults.looser(path, String(got), careful.slice(least).join(', '))]
    : [];
}

function factFaultsOf(facts: Facts, place: Place, value: ShopParts): readonly Fault[] {
  const { path, key, fact, limits } = place;
  if (path.startsWith('policy.')) return [];
  const ctx: CheckContext = { file: path, sourceKeys: new Set(Object.keys(facts.sources)) };
  const { own: _own, ...bare } = fact;
  const whole = { ...bare, ...value };
  const found = path.startsWith('law.') ? lawFaults(ctx, place, value) : factFaults(ctx, path, key, whole, limits);
  return found.map((fault) => ({ ...fault, field: path }));
}

function lawFaults(ctx: CheckContext, { key, limits }: Place, { value }: ShopParts): Fault[] {
  if (key !== 'years')
    return /^\d{4}-\d{2}-\d{2}$/.test(String(value)) && !Number.isNaN(Date.parse(String(value)))
      ? []
      : [dataFault(ctx, key, 'DATA_FORM', value, 'a date like 2026-11-24', 'This is not a date.')];
  const fits = typeof value === 'number' && Number.isInteger(value) && value <= (limits?.high ?? value);
  return fits ? [] : [dataFault(ctx, key, 'DATA_RANGE', value, `whole years to ${limits?.high}`, 'This cannot be.')];
}

/** Does the whole row still hang together: cool below warm below basking, young below adult, review after check? */
function contradictions(facts: Facts, path: string): readonly Fault[] {
  const [table, id = ''] = path.split('.');
  const sourceKeys = new Set(Object.keys(facts.sources));
  const rule = facts.law.find((row) => row.id === id);
  if (table === 'law' && rule && rule.reviewBy <= rule.dateChecked) return [overlayFaults.review(path, rule.reviewBy)];
  const species = facts.species[id];
  if (table !== 'species' || species === undefined) return [];
  const ctx = { file: `species/${id}.json`, sourceKeys };
  return speciesFrom(ctx, withoutMarks(species)).faults.map((fault) => ({ ...fault, field: path }));
}

/** The same tree without the marks of shop values, which no file of data/ may hold. */
const withoutMarks = (x: unknown): unknown =>
  JSON.parse(JSON.stringify(x, (key, value: unknown) => (key === 'own' ? undefined : value)));

function laid(facts: Facts, place: Place, one: Omit<ShopValue, 'was'> & Partial<Pick<ShopValue, 'was'>>): Facts {
  const { path, value, by, at, why } = one;
  const shipped = Object.fromEntries(place.parts.map((part) => [part, (place.fact[part] ?? null) as never]));
  const own: OwnMark = { path, value, was: one.was ?? shipped, by, at, why };
  const overlaid = [...facts.overlaid.filter((other) => other.path !== path), own];
  const [table = '', id = '', key = '', kind = ''] = path.split('.');
  const fact = { ...place.fact, ...value, own };
  const put = (keys: readonly string[], next: unknown): Facts => ({
    ...(withValue(facts as unknown as Tree, keys, next) as unknown as Facts),
    overlaid,
  });
  switch (table) {
    case 'materials':
      return inStep(put(['materialFacts', id, 'facts', key], fact));
    case 'heaters':
      return put(['heaters', id, 'facts', key], fact);
    case 'substrates': {
      const row = facts.substrates[id];
      const top = row && key in row ? { [key]: fact } : {};
      return put(['substrates', id], { ...row, ...top, facts: { ...row?.facts, [key]: fact } });
    }
    case 'thermostats': {
      const drive = facts.thermostats[id as 'pulse']?.drives[kind as 'heat-mat'];
      return key === 'drives'
        ? put(['thermostats', id, 'drives', kind], { ...drive, fit: value.value, own })
        : put(['thermostats', id, 'facts', key], fact);
    }
    case 'law':
      return {
        ...facts,
        law: facts.law.map((row) => (row.id === id ? lawWith(row, key, value.value, own) : row)),
        overlaid,
      };
    case 'policy':
      return put(['policies', id], fact);
    default:
      return put(path.split('.'), fact);
  }
}

const lawWith = (row: Facts['law'][number], key: string, value: unknown, own: OwnMark): Facts['law'][number] =>
  key === 'years'
    ? { ...row, effect: { ...row.effect, years: value } as typeof row.effect, own }
    : { ...row, [key]: value, own };

function withValue(tree: Tree, keys: readonly string[], value: unknown): Tree {
  const [first, ...rest] = keys;
  if (first === undefined) return tree;
  const below = tree[first];
  return { ...tree, [first]: rest.length === 0 ? value : withValue(isRecord(below) ? below : {}, rest, value) };
}

/** The table that physics is handed without sources follows the facts it was made from. */
function inStep(facts: Facts): Facts {
  const materials = Object.fromEntries(
    Object.entries(facts.materials).map(([id, material]) => {
      const row: MaterialFacts | undefined = facts.materialFacts[id];
      const numbers = Object.entries(row?.facts ?? {}).filter(
        (pair): pair is [string, Fact] => typeof pair[1].value === 'number',
      );
      const known = numbers.filter(([key]) => key in material);
      return [id, { ...material, ...Object.fromEntries(known.map(([key, f]) => [key, f.value])) }];
    }),
  ) as Facts['materials'];
  return { ...facts, materials };
}
