// Who would notice if one value of data/ were changed? Witnesses from strong to weak: figures printed in a page that was
// read, our working notes of pages read, worked values and rules of the trade, our notes of common practice, relations
// between facts, and last our own old value, which proves only that nothing changed unnoticed.
import { readFileSync } from 'node:fs';
import { factsFrom } from '../../src/husbandry/facts.ts';
import { judge } from '../check-row.ts';
import { readPrinted } from '../husbandry/printed.ts';
import { readSpaceTables, spaceRows } from '../husbandry/space.ts';
import { readExamination, tradeRows } from '../husbandry/trade-facts.ts';
import { changed, type Leaf, type Place, type Raw } from './leaves.ts';
import { relationFaults } from './relations.ts';

export const witnessKinds = [
  'printed',
  'page-notes',
  'worked',
  'common-practice',
  'memory-notes',
  'relation',
  'frozen',
] as const;
export type WitnessKind = (typeof witnessKinds)[number];

export const witnessWords: Readonly<Record<WitnessKind, string>> = {
  printed: 'figure printed in a page that was read',
  'page-notes': 'our working notes of a page that was read',
  worked: 'worked value of a space standard',
  'common-practice': 'rule of the trade',
  'memory-notes': 'our working notes of common practice',
  relation: 'relation to other facts',
  frozen: 'our own old value: proves only that it has not changed unnoticed',
};

const here = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

type Notes = Readonly<Record<string, Readonly<Record<'page' | 'memory', Readonly<Record<string, Leaf>>>>>>;
type Frozen = Readonly<Record<string, Readonly<Record<string, Leaf>>>>;

export interface Witness {
  readonly kind: WitnessKind;
  /** True when the value there would be noticed. */
  readonly notices: (value: Leaf) => boolean;
}

export interface Court {
  /** Every witness that speaks for a place, strongest first. */
  readonly witnessesOf: (place: Place) => readonly Witness[];
  /** Paths that a witness names but data/ no longer holds. */
  readonly orphans: (places: readonly Place[]) => readonly string[];
}

const differs =
  (wanted: Leaf): Witness['notices'] =>
  (value) =>
    value !== wanted;

/** @param frozen our own old values; left out when new ones are to be frozen */
export function courtOf(raw: Raw, frozen = here('./frozen.json') as Frozen): Court {
  const printed = printedWitnesses();
  const notes = here('./notes.json') as Notes;
  const { facts } = factsFrom(raw);
  const tables = readSpaceTables();
  const examination = readExamination();
  const brokenBefore = new Set(
    spaceRows(facts, tables)
      .filter((row) => judge(row, []).verdict !== 'agrees')
      .map((row) => row.id),
  );
  const tradeBefore = JSON.stringify(tradeRows(facts, examination));
  const relationsBefore = new Map<string, number>();

  const partial = (file: string, next: unknown) =>
    factsFrom({ 'sources.json': raw['sources.json'], [file]: next }).facts;
  const worked =
    ({ file, keys }: Place): Witness['notices'] =>
    (value) => {
      const next = partial(file, changed(raw[file], keys, value));
      // A standard that the data check refuses is gone; that is a relation's business.
      if (Object.keys(next.standards).length < Object.keys(facts.standards).length) return false;
      return spaceRows({ ...facts, standards: next.standards }, tables).some(
        (row) => judge(row, []).verdict !== 'agrees' && !brokenBefore.has(row.id),
      );
    };
  const trade =
    ({ file, keys }: Place): Witness['notices'] =>
    (value) => {
      const next = partial(file, changed(raw[file], keys, value));
      const table = tradeTables[file];
      return (
        table !== undefined &&
        JSON.stringify(tradeRows({ ...facts, [table]: next[table] }, examination)) !== tradeBefore
      );
    };
  const relation = ({ file, keys }: Place): Witness['notices'] => {
    if (!relationsBefore.has(file)) relationsBefore.set(file, relationFaults(raw, file).length);
    return (value) =>
      relationFaults({ ...raw, [file]: changed(raw[file], keys, value) }, file).length >
      (relationsBefore.get(file) ?? 0);
  };

  const witnessesOf = (place: Place): readonly Witness[] => {
    const { path, file } = place;
    const key = path.slice(file.length + 1);
    const found: Witness[] = [];
    const add = (kind: WitnessKind, notices: Witness['notices'] | undefined): void => {
      if (notices) found.push({ kind, notices });
    };
    add('printed', printed.get(path));
    const { page = {}, memory = {} } = notes[file] ?? {};
    if (key in page) add('page-notes', differs(page[key] as Leaf));
    if (file === 'standards.json' && typeof place.value === 'number') add('worked', worked(place));
    if (file in tradeTables) add('common-practice', trade(place));
    if (key in memory) add('memory-notes', differs(memory[key] as Leaf));
    add('relation', relation(place));
    const old = frozen[file];
    if (old && key in old) add('frozen', differs(old[key] as Leaf));
    return found;
  };

  const orphans = (places: readonly Place[]): readonly string[] => {
    const known = new Set(places.map(({ path }) => path));
    const named = [
      ...Object.entries(notes).flatMap(([file, { page, memory }]) =>
        Object.keys({ ...page, ...memory }).map((key) => `${file}#${key}`),
      ),
      ...Object.entries(frozen).flatMap(([file, row]) => Object.keys(row).map((key) => `${file}#${key}`)),
    ];
    return named.filter((path) => !known.has(path));
  };
  return { witnessesOf, orphans };
}

const tradeTables: Readonly<Record<string, 'heaters' | 'thermostats' | 'care'>> = {
  'heaters.json': 'heaters',
  'thermostats.json': 'thermostats',
  'care.json': 'care',
};

/** Figures printed in pages, by the place in data/ that names them. */
function printedWitnesses(): ReadonlyMap<string, Witness['notices']> {
  const files: Readonly<Record<string, string>> = { heaters: 'heaters.json', materialFacts: 'materials.json' };
  const rows = readPrinted().flatMap(({ rows: own, ...table }) =>
    own.flatMap(({ id, title, path, unit, out }) =>
      Object.entries(out).map(([quantity, expected]): [string, Witness['notices']] => {
        const [top = '', name = '', ...rest] = path.split('.');
        const keys = rest.filter((one) => one !== 'facts').join('.');
        const where =
          top === 'species' ? `species/${name}.json#${keys}` : `${files[top] ?? `${top}.json`}#${name}.${keys}`;
        const row = { id, title, quantity, unit, expected, ...table };
        return [`${where}.${quantity}`, (value) => judge({ ...row, ours: Number(value) }, []).verdict !== 'agrees'];
      }),
    ),
  );
  return new Map(rows);
}
