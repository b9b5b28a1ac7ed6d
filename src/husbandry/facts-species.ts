// From one file of data/species/ to a Species: bad facts are dropped and named; a species without its climate is dropped.
import type { Fault } from '../shared/fault.ts';
import type { Fact, Species } from './fact.ts';
import { type CheckContext, dataFault, goodFacts, isRecord } from './fact-check.ts';

/** Without these nothing can be judged. */
export const neededForClimate = ['baskingSurfaceC', 'warmAirC', 'coolAirC', 'nightMinC', 'rhPct'] as const;
const stages = ['hatchling', 'young', 'adult'] as const;
const rowKeys = ['id', 'scientificName', 'commonName', 'family', 'all', ...stages, 'notes'];

const bottom = (f: Fact | undefined): number | null => f?.low ?? (typeof f?.value === 'number' ? f.value : null);
const top = (f: Fact | undefined): number | null => f?.high ?? (typeof f?.value === 'number' ? f.value : null);

/** Facts of one species that contradict each other. */
function orderFaults(ctx: CheckContext, s: Species): Fault[] {
  const faults: Fault[] = [];
  const below = (a: [string, Fact | undefined], b: [string, Fact | undefined], side: typeof bottom) => {
    const x = side(a[1]);
    const y = side(b[1]);
    if (x !== null && y !== null && x > y)
      faults.push(dataFault(ctx, a[0], 'DATA_ORDER', x, `at most ${b[0]} (${y})`, `${a[0]} is above ${b[0]}.`));
  };
  const of = (key: string): [string, Fact | undefined] => [`all.${key}`, s.all[key]];
  below(of('coolAirC'), of('warmAirC'), top);
  below(of('warmAirC'), of('baskingSurfaceC'), top);
  below(of('nightMinC'), of('warmAirC'), bottom);
  below(of('baskingSurfaceC'), of('ctMaxC'), top);
  below(of('rhPct'), of('rhSloughPct'), bottom);
  for (const key of ['totalLengthCm', 'headWidthMm', 'massG']) {
    below([`hatchling.${key}`, s.hatchling[key]], [`young.${key}`, s.young[key]], bottom);
    below([`young.${key}`, s.young[key]], [`adult.${key}`, s.adult[key]], top);
    below([`hatchling.${key}`, s.hatchling[key]], [`adult.${key}`, s.adult[key]], top);
  }
  return faults;
}

export function speciesFrom(
  ctx: CheckContext,
  x: unknown,
): { readonly species: Species | null; readonly faults: Fault[] } {
  if (!isRecord(x))
    return { species: null, faults: [dataFault(ctx, '', 'DATA_FORM', x, 'a species object', 'Not a species.')] };
  const faults: Fault[] = [];
  for (const key of Object.keys(x))
    if (!rowKeys.includes(key))
      faults.push(dataFault(ctx, key, 'DATA_FORM', key, rowKeys.join(', '), `Unknown part "${key}".`));
  for (const key of ['id', 'scientificName', 'commonName', 'family'])
    if (typeof x[key] !== 'string' || x[key] === '')
      faults.push(dataFault(ctx, key, 'DATA_FORM', x[key], 'a text', `The ${key} is missing.`));
  const fileId = ctx.file.replace(/^.*\//, '').replace(/\.json$/, '');
  if (x.id !== fileId)
    faults.push(dataFault(ctx, 'id', 'DATA_FORM', x.id, fileId, 'The id is not the name of the file.'));
  const part = (name: string): Readonly<Record<string, Fact>> => {
    const { facts, faults: found } = goodFacts(ctx, name, x[name] ?? {});
    faults.push(...found);
    return facts;
  };
  const species: Species = {
    id: String(x.id),
    scientificName: String(x.scientificName),
    commonName: String(x.commonName),
    family: String(x.family),
    all: part('all'),
    hatchling: part('hatchling'),
    young: part('young'),
    adult: part('adult'),
    notes: Array.isArray(x.notes) ? x.notes.map(String) : [],
  };
  faults.push(...orderFaults(ctx, species));
  const missing = neededForClimate.filter((key) => top(species.all[key]) === null);
  for (const key of missing)
    faults.push(
      dataFault(
        ctx,
        `all.${key}`,
        'DATA_MISSING',
        null,
        'a sourced range',
        `Without a usable ${key} the species cannot be judged.`,
      ),
    );
  const usable = missing.length === 0 && x.id === fileId;
  return { species: usable ? species : null, faults };
}
