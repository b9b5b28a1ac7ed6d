// Is this unknown value what the field table wants, and if not, what exactly is wrong with each part?
// Reads any value without ever throwing and returns a clean copy that holds known keys only.
// Leaves out: rules between fields (enclosure-cross.ts).
import type { Fault } from '../shared/fault.ts';
import type { Field } from './enclosure-fields.ts';
import { allowedInWords, type FieldNode } from './field-tree.ts';
import { nearestKey } from './nearest-key.ts';
import { unitSlip } from './unit-slip.ts';

/** Unknown keys named one by one in each object; the rest are counted. */
const unknownKeysNamed = 12;
/** Characters of a value that a fault repeats. */
const shownCharacters = 48;

/** Control, line-separator and direction-changing characters: never repeated to a screen as they came. */
const unprintable = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;
export const idPattern = '^[A-Za-z0-9][A-Za-z0-9 _.-]*$';
export const textPattern = '^[^\\u0000-\\u001f\\u007f-\\u009f\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069]*$';
const idForm = new RegExp(idPattern, 'u');
const textForm = new RegExp(textPattern, 'u');

/** A value as a fault may repeat it: one line, short, nothing that moves a cursor. */
export function shown(value: unknown): string {
  if (typeof value === 'string') {
    const cut = value.length > shownCharacters;
    const text = JSON.stringify(value.slice(0, shownCharacters)).replace(unprintable, hexOf);
    return cut ? `${text}... (${value.length} characters)` : text;
  }
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value === null) return 'null';
  if (value === undefined) return 'nothing';
  return typeof value === 'object' ? 'an object' : typeof value === 'function' ? 'a function' : String(value);
}

const hexOf = (c: string): string => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** Reads one value against one node of the field tree.
 *  @param faults every fault found is pushed here
 *  @returns a clean copy; NaN for a bad number, undefined for any other bad part */
export function readField(node: FieldNode, raw: unknown, path: string, faults: Fault[]): unknown {
  const { field } = node;
  if (raw === null && field.nullable) return null;
  switch (field.kind) {
    case 'object':
      return readObject(node, raw, path, faults);
    case 'list':
      return readList(node, raw, path, faults);
    case 'number':
      return readNumber(field, raw, path, faults);
    default:
      return readPlain(field, raw, path, faults);
  }
}

function readObject(node: FieldNode, raw: unknown, path: string, faults: Fault[]): unknown {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return wrongType(node.field, raw, path, faults);
  const source = raw as Readonly<Record<string, unknown>>;
  const clean: Record<string, unknown> = {};
  for (const [key, child] of node.children) {
    const at = path === '' ? key : `${path}.${key}`;
    if (!Object.hasOwn(source, key) || source[key] === undefined) {
      if (!child.field.optional) faults.push(missing(child.field, at));
      continue;
    }
    clean[key] = readField(child, source[key], at, faults);
  }
  faults.push(...unknownKeys(Object.keys(source), node, path));
  return clean;
}

function unknownKeys(keys: readonly string[], node: FieldNode, path: string): Fault[] {
  const strange = keys.filter((key) => !node.children.has(key));
  const known = [...node.children.keys()];
  const where = path === '' ? 'an enclosure file' : path;
  const named = strange.slice(0, unknownKeysNamed).map((key): Fault => {
    const label = shown(key).replace(/^"|"(?=\.\.\.|$)/g, '');
    const near = nearestKey(key, known);
    return {
      code: 'ENC_UNKNOWN_KEY',
      field: path === '' ? label : `${path}.${label}`,
      got: shown(key),
      allowed: known.join(' | '),
      say: `${where} has no key ${shown(key)}.`,
      fix: near === null ? 'Take it out.' : `Did you mean "${near}"? Otherwise take it out.`,
    };
  });
  if (strange.length <= unknownKeysNamed) return named;
  const more = strange.length - unknownKeysNamed;
  const summary: Fault = {
    code: 'ENC_UNKNOWN_KEY',
    field: path,
    got: `${more} more unknown keys`,
    allowed: known.join(' | '),
    say: `${where} has ${more} more keys that are not known.`,
    fix: 'Take them out.',
  };
  return [...named, summary];
}

function readList(node: FieldNode, raw: unknown, path: string, faults: Fault[]): unknown {
  const { field, item } = node;
  if (!Array.isArray(raw) || item === null) return wrongType(field, raw, path, faults);
  const { low = 0, high = 0 } = field;
  if (raw.length < low || raw.length > high) {
    const fix = raw.length < low ? 'Add the missing entries.' : 'Take out the entries that are too many.';
    faults.push({
      code: 'ENC_LENGTH',
      field: path,
      got: `${raw.length} entries`,
      allowed: allowedInWords(field),
      say: `${path} (${field.say}) has ${raw.length} entries.`,
      fix: `${fix} ${field.fix}`.trim(),
    });
  }
  return Array.from({ length: Math.min(raw.length, high) }, (_, i) => readField(item, raw[i], `${path}[${i}]`, faults));
}

function readNumber(field: Field, raw: unknown, path: string, faults: Fault[]): number {
  if (typeof raw !== 'number' || Number.isNaN(raw)) {
    wrongType(field, raw, path, faults);
    return Number.NaN;
  }
  const { low = -Infinity, high = Infinity } = field;
  if (raw >= low && raw <= high) return raw;
  const slip = unitSlip(raw, field);
  faults.push({
    code: 'ENC_RANGE',
    field: path,
    got: shown(raw),
    allowed: allowedInWords(field),
    say: `${path} (${field.say}) is ${shown(raw)}, outside ${allowedInWords(field)}.`,
    fix: [slip ?? `Give a value of ${allowedInWords(field)}.`, field.fix].filter(Boolean).join(' '),
  });
  return Number.NaN;
}

function readPlain(field: Field, raw: unknown, path: string, faults: Fault[]): unknown {
  const words = field.words ?? [];
  if (field.kind === 'flag') return typeof raw === 'boolean' ? raw : wrongType(field, raw, path, faults);
  if (field.kind === 'constant') {
    if (words.some((w) => w === raw)) return raw;
    faults.push(wrongWord(field, raw, path, words.map(String)));
    return undefined;
  }
  if (typeof raw !== 'string') return wrongType(field, raw, path, faults);
  if (field.kind === 'word') {
    if (words.includes(raw)) return raw;
    faults.push(wrongWord(field, raw, path, words.map(String)));
    return undefined;
  }
  const { low = 0, high = 0 } = field;
  const length = raw.length > 2 * high ? raw.length : [...raw].length;
  if (length >= low && length <= high && (field.kind === 'id' ? idForm : textForm).test(raw)) return raw;
  faults.push({
    code: 'ENC_TEXT',
    field: path,
    got: shown(raw),
    allowed: allowedInWords(field),
    say: `${path} (${field.say}) is ${length === 0 ? 'empty' : 'not usable as it stands'}.`,
    fix: `Write ${allowedInWords(field)}, without control characters. ${field.fix}`.trim(),
  });
  return undefined;
}

function wrongType(field: Field, raw: unknown, path: string, faults: Fault[]): undefined {
  const asNumber =
    field.kind === 'number' && typeof raw === 'string' && raw.length < 40 ? Number(raw.trim()) : Number.NaN;
  const plain = typeof raw === 'string' && raw.trim() !== '' && Number.isFinite(asNumber);
  faults.push({
    code: 'ENC_TYPE',
    field: path,
    got: shown(raw),
    allowed: allowedInWords(field),
    say: `${path === '' ? 'The file' : path} (${field.say}) is ${shown(raw)}, which is not ${kindInWords(field)}.`,
    fix: `${plain ? `Write ${asNumber} without quotes.` : `Write ${allowedInWords(field)}.`} ${field.fix}`.trim(),
  });
  return undefined;
}

function kindInWords(field: Field): string {
  const names = { object: 'an object', list: 'a list', number: 'a number', flag: 'true or false' } as const;
  return field.kind in names ? names[field.kind as keyof typeof names] : 'text';
}

function wrongWord(field: Field, raw: unknown, path: string, words: readonly string[]): Fault {
  const near = typeof raw === 'string' ? nearestKey(raw, words) : null;
  return {
    code: 'ENC_WORD',
    field: path,
    got: shown(raw),
    allowed: allowedInWords(field),
    say: `${path} (${field.say}) is ${shown(raw)}, which is not one of the words known here.`,
    fix: near === null ? `Write one of: ${allowedInWords(field)}.` : `Did you mean "${near}"?`,
  };
}

function missing(field: Field, path: string): Fault {
  const none = field.nullable ? ' Write null when there is none or nobody knows.' : '';
  return {
    code: 'ENC_MISSING',
    field: path,
    got: 'nothing',
    allowed: allowedInWords(field),
    say: `${path} (${field.say}) is missing.`,
    fix: `Add it: ${allowedInWords(field)}.${none}`,
  };
}
