// What facts of data/ owe to each other, whatever their numbers are: complaints about one changed file.
// Leaves out comparing any value with what it should be (witnesses.ts).
import { careFactsFrom, careFiles } from '../../src/animal/care-facts.ts';
import { factsFrom } from '../../src/husbandry/facts.ts';
import type { Raw } from './leaves.ts';

interface Source {
  readonly kind?: string;
  readonly read?: string;
}
type Row = Readonly<Record<string, unknown>>;

const isRecord = (x: unknown): x is Row => typeof x === 'object' && x !== null && !Array.isArray(x);

/** UV index by zone as the paper that set up the zones prints it. */
const zones: Readonly<Record<number, readonly [number, number]>> = {
  1: [0, 0.7],
  2: [0.7, 1],
  3: [1, 2.6],
  4: [2.6, 3.5],
};

/** Complaints; none when the file is at peace with itself and with sources.json. */
export function relationFaults(raw: Raw, file: string): readonly string[] {
  const sources = (raw['sources.json'] ?? {}) as Readonly<Record<string, Source>>;
  const json = raw[file];
  return [
    ...checkFaults(raw, file),
    ...marks(json, sources, file),
    ...(file.startsWith('species/') ? uv(json) : []),
    ...lives(file, json),
  ];
}

/** The program's own check of the facts, on this file alone. */
function checkFaults(raw: Raw, file: string): readonly string[] {
  const some = { 'sources.json': raw['sources.json'], [file]: raw[file] };
  const own = factsFrom(some).faults.filter(({ code }) => code !== 'DATA_LINK');
  // What the others complain about is no different before and after a change of this one.
  const ofCare = careFiles.some((one) => one === file);
  const care = ofCare ? careFactsFrom(raw, new Set(Object.keys((raw['sources.json'] ?? {}) as object))).faults : [];
  return [...own, ...care].map(({ field, say }) => `${field}: ${say}`);
}

/** A value is "read on a page" only when its source is; our choice and common practice are never read. */
function marks(x: unknown, sources: Readonly<Record<string, Source>>, at: string): readonly string[] {
  if (Array.isArray(x)) return x.flatMap((one, i) => marks(one, sources, `${at}.${i}`));
  if (!isRecord(x)) return [];
  const { source, read } = x;
  const row = typeof source === 'string' ? sources[source] : undefined;
  const own =
    row && read === 'page' && row.read !== 'page' ? [`${at}: read on a page of a source that was not read`] : [];
  return [...own, ...Object.entries(x).flatMap(([key, one]) => marks(one, sources, `${at}.${key}`))];
}

function uv(species: unknown): readonly string[] {
  const all = isRecord(species) && isRecord(species.all) ? species.all : {};
  const [zone, index] = [all.fergusonZone, all.uvIndex];
  if (!isRecord(zone) || !isRecord(index) || typeof zone.value !== 'number') return [];
  const band = zones[zone.value];
  return band && band[0] === index.low && band[1] === index.high ? [] : [`uvIndex is not that of zone ${zone.value}`];
}

/** A spot lamp lives shorter than a halogen lamp, that shorter than an emitter. */
function lives(file: string, json: unknown): readonly string[] {
  if (file !== 'heaters.json' || !Array.isArray(json)) return [];
  const life = (id: string): number =>
    json.find((row: { id: string }) => row.id === id)?.lifeHours?.value ?? Number.NaN;
  return life('basking-lamp') < life('halogen-lamp') && life('halogen-lamp') < life('ceramic-emitter')
    ? []
    : ['lamp lives are out of order'];
}
