// From anything that claims to be a shelf to a sound one, or every fault at once.
// Leaves out: reading files and the text form of a table (shelf-csv.ts).
import { nearestKey } from '../../physics/nearest-key.ts';
import type { Fault } from '../../shared/fault.ts';
import { bad, good, type Result } from '../../shared/result.ts';
import type { Shelf, ShelfItem, ShelfKind } from './shelf.ts';
import { fieldsOf, type ShelfField, shelfKinds } from './shelf-fields.ts';

type Row = Readonly<Record<string, unknown>>;

/** Most items of a shelf; our choice, a large shop has a few hundred. */
export const mostItems = 5000;

const isRow = (x: unknown): x is Row => typeof x === 'object' && x !== null && !Array.isArray(x);
const shown = (x: unknown): string => (x === undefined ? 'nothing' : String(JSON.stringify(x)).slice(0, 80));

/** Codes of ISO 4217, as the engine that runs us knows them. */
const currencies: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'));

const longestText = 120;
const plainTextSay = `a text of 1 to ${longestText} letters, no space or line break around it, not begun with = + - @`;

/** Survives a spreadsheet: no blank at its ends, and no sign with which a spreadsheet begins to calculate. */
const isPlainText = (value: unknown): boolean =>
  typeof value === 'string' &&
  value.length > 0 &&
  value.length <= longestText &&
  value === value.trim() &&
  !/^[=+\-@]/.test(value);

export function shelfFault(
  code: string,
  field: string,
  got: unknown,
  allowed: string,
  say: string,
  fix: string,
): Fault {
  return { code, field, got: shown(got), allowed, say, fix };
}

/** @param raw parsed JSON   Faults: SHELF_FORM, SHELF_FIELD, SHELF_TWICE, SHELF_UNKNOWN_KEY. */
export function shelfFrom(raw: unknown): Result<Shelf> {
  if (!isRow(raw) || raw.format !== 'warmstead-shelf' || raw.version !== 1 || !Array.isArray(raw.items))
    return bad([
      shelfFault(
        'SHELF_FORM',
        '',
        isRow(raw) ? raw.format : raw,
        'format "warmstead-shelf", version 1 and a list of items',
        'This is not a shelf.',
        'Start from data/shelf/starter.json, or bring a table in as CSV.',
      ),
    ]);
  const faults: Fault[] = [];
  const head: readonly (readonly [string, boolean, string])[] = [
    ['name', isPlainText(raw.name), plainTextSay],
    ['currency', currencies.has(String(raw.currency)), 'a code of ISO 4217, e.g. GBP or EUR'],
    ['invented', typeof raw.invented === 'boolean', 'true or false'],
  ];
  for (const [key, fine, allowed] of head)
    if (!fine)
      faults.push(shelfFault('SHELF_FIELD', key, raw[key], allowed, `The ${key} is missing or wrong.`, 'Enter it.'));
  if (raw.items.length > mostItems)
    faults.push(
      shelfFault(
        'SHELF_FORM',
        'items',
        raw.items.length,
        `at most ${mostItems}`,
        'Too many items.',
        'Split the shelf.',
      ),
    );
  const seen = new Set<string>();
  raw.items.forEach((row: unknown, i) => {
    faults.push(...itemFaults(row, `items[${i}]`, seen));
  });
  return faults.length > 0 ? bad(faults) : good(raw as unknown as Shelf);
}

/** Materials that the facts do not know. @param materials of data/materials.json */
export function shelfMaterialFaults(shelf: Shelf, materials: Readonly<Record<string, unknown>>): Fault[] {
  const known = Object.keys(materials);
  return shelf.items.flatMap((item, i) =>
    materialKeys.flatMap((key) => {
      const got = (item as unknown as Row)[key];
      if (typeof got !== 'string' || known.includes(got)) return [];
      const near = nearestKey(got, known);
      const fix = near === null ? 'Choose one of those named.' : `Did you mean "${near}"?`;
      const say = `The facts hold no material "${got}".`;
      return [shelfFault('SHELF_FIELD', `items[${i}].${key}`, got, known.join(', '), say, fix)];
    }),
  );
}

const materialKeys = ['materialId', 'wallMaterialId', 'frontMaterialId'] as const;

function itemFaults(row: unknown, at: string, seen: Set<string>): Fault[] {
  if (!isRow(row)) return [shelfFault('SHELF_FORM', at, row, 'an item', `${at} is no item.`, 'Take it out.')];
  const kind = shelfKinds.find((k) => k === row.kind);
  if (!kind)
    return [
      shelfFault('SHELF_FIELD', `${at}.kind`, row.kind, shelfKinds.join(' | '), `${at}: unknown kind.`, 'Choose one.'),
    ];
  const faults = fieldsOf(kind).flatMap((field) => fieldFaults(field, row[field.key], at));
  const known = fieldsOf(kind).map((field) => field.key);
  for (const key of Object.keys(row))
    if (!known.includes(key)) {
      const near = nearestKey(key, known);
      const fix = near === null ? `Take "${key}" out.` : `Did you mean "${near}"?`;
      faults.push(
        shelfFault('SHELF_UNKNOWN_KEY', `${at}.${key}`, key, known.join(', '), `A ${kind} has no "${key}".`, fix),
      );
    }
  if (typeof row.id === 'string') {
    if (seen.has(row.id))
      faults.push(
        shelfFault('SHELF_TWICE', `${at}.id`, row.id, 'an id used once', `${at}: this id came before.`, 'Rename one.'),
      );
    seen.add(row.id);
  }
  faults.push(...sizeFaults(row, kind, at));
  return faults;
}

function fieldFaults(field: ShelfField, value: unknown, at: string): Fault[] {
  const path = `${at}.${field.key}`;
  if (value === null && field.nullable) return [];
  const wrong = (allowed: string) => [
    shelfFault('SHELF_FIELD', path, value, allowed, `${path} is missing or out of range.`, 'Correct it.'),
  ];
  if (field.type === 'text') {
    return isPlainText(value) ? [] : wrong(plainTextSay);
  }
  if (field.type === 'flag') return typeof value === 'boolean' ? [] : wrong('true or false');
  if (field.type === 'word') return field.words?.includes(String(value)) ? [] : wrong((field.words ?? []).join(' | '));
  const { low = 0, high = 0 } = field;
  const fine = typeof value === 'number' && Number.isFinite(value) && value >= low && value <= high;
  return fine
    ? []
    : wrong(typeof value === 'string' ? `a number from ${low} to ${high}, without unit` : `${low} to ${high}`);
}

const flat: readonly string[] = ['heat-mat', 'radiant-panel'];

/** Mats and panels need a size; lamps and emitters have none. */
function sizeFaults(row: Row, kind: ShelfKind, at: string): Fault[] {
  if (kind !== 'heater') return [];
  const wants = flat.includes(String(row.heaterKind));
  return ['lengthM', 'depthM']
    .filter((key) => (typeof row[key] === 'number') !== wants)
    .map((key) =>
      shelfFault(
        'SHELF_FIELD',
        `${at}.${key}`,
        row[key],
        wants ? 'its size in metres' : 'null',
        wants ? `${at}: a mat or panel needs its size.` : `${at}: a lamp or emitter has no size here.`,
        wants ? 'Enter lengthM and depthM.' : 'Leave it empty.',
      ),
    );
}

/** The customer's own things take part in a search at no price. */
export const owned = (item: ShelfItem): ShelfItem => ({ ...item, price: 0, inStock: true });
