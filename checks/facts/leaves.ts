// Every number, word of a list and mark in data/, one by one, and how each may be changed plausibly.
// Leaves out prose (what people read) and the example enclosures, which are no facts.

export type Leaf = number | string | boolean | null;
export type Raw = Readonly<Record<string, unknown>>;

export interface Place {
  /** "species/corn.json#all.rhPct.low"; rows of a list go by their id where they have one. */
  readonly path: string;
  readonly file: string;
  /** Keys and positions from the top of the file. */
  readonly keys: readonly (string | number)[];
  readonly value: Leaf;
}

/** Parts that only people read: changing them changes no answer. */
const prose = ['say', 'why', 'note', 'notes', 'title', 'name', 'at', 'url', 'authors', 'howRead', 'en', 'de', 'wanted'];
/** Texts that are values of facts, whatever they look like. */
const valued = ['value', 'values'];

const isRecord = (x: unknown): x is Readonly<Record<string, unknown>> =>
  typeof x === 'object' && x !== null && !Array.isArray(x);

export function placesOf(raw: Raw): readonly Place[] {
  return Object.entries(raw)
    .filter(([file]) => !file.startsWith('examples/'))
    .flatMap(([file, json]) => below(file, json, [], []));
}

function below(
  file: string,
  x: unknown,
  keys: readonly (string | number)[],
  names: readonly string[],
): readonly Place[] {
  if (Array.isArray(x))
    return x.flatMap((one: unknown, i) => below(file, one, [...keys, i], [...names, nameOf(one, i)]));
  if (isRecord(x))
    return Object.entries(x)
      .filter(([key, value]) => !prose.includes(key) || typeof value === 'number')
      .flatMap(([key, value]) => below(file, value, [...keys, key], [...names, key]));
  const key = keys.findLast((one) => typeof one === 'string') ?? '';
  const counts = typeof x !== 'string' || valued.includes(String(key)) || /^\S{1,60}$/.test(x) || key === 'kind';
  return counts ? [{ path: `${file}#${names.join('.')}`, file, keys, value: x as Leaf }] : [];
}

const nameOf = (row: unknown, i: number): string => (isRecord(row) && typeof row.id === 'string' ? row.id : String(i));

/** Plausible slips: a few per cent up and down, the other mark, another word that stands at such a place. */
export function slipsOf({ value, keys }: Place, wordsByKey: ReadonlyMap<string, readonly string[]>): readonly Leaf[] {
  if (typeof value === 'boolean') return [!value];
  if (value === null) return [1];
  if (typeof value === 'string') {
    const others = (wordsByKey.get(keyOf(keys)) ?? []).filter((word) => word !== value);
    return [others[0] ?? `${value}-`];
  }
  if (Number.isInteger(value) && Math.abs(value) <= 20) return [value + 1, value - 1];
  return [value * 1.07, value * 0.93];
}

/** Words that stand at places of the same name. */
export function wordsAt(places: readonly Place[]): ReadonlyMap<string, readonly string[]> {
  const words = new Map<string, Set<string>>();
  for (const { keys, value } of places) {
    if (typeof value !== 'string') continue;
    const key = keyOf(keys);
    words.set(key, (words.get(key) ?? new Set()).add(value));
  }
  return new Map([...words].map(([key, set]) => [key, [...set]]));
}

/** The last two names, so that "moisture.value" is not mixed with "holder.value". */
const keyOf = (keys: readonly (string | number)[]): string =>
  keys
    .filter((one) => typeof one === 'string')
    .slice(-2)
    .join('.');

/** The file with one leaf changed; everything beside its way is shared. */
export function changed(x: unknown, keys: readonly (string | number)[], value: Leaf): unknown {
  const [first, ...rest] = keys;
  if (first === undefined) return value;
  if (Array.isArray(x)) return x.map((one: unknown, i) => (i === first ? changed(one, rest, value) : one));
  const record = x as Readonly<Record<string, unknown>>;
  return { ...record, [first]: changed(record[first], rest, value) };
}
