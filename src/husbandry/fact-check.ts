// Is one fact well formed, sourced and possible? Every complaint names file, key and reason.
// Leaves out: whether facts of one row agree with each other (facts-*.ts).
import type { Fault } from '../shared/fault.ts';
import type { Fact } from './fact.ts';
import { type Limits, limitsFor, unitSuffix } from './quantities.ts';

const readMarks = ['page', 'memory', 'measured'];
const factKeys = ['value', 'values', 'low', 'high', 'source', 'at', 'read', 'note', 'alternatives', 'why'];

export interface CheckContext {
  readonly file: string;
  readonly sourceKeys: ReadonlySet<string>;
}

export const isRecord = (x: unknown): x is Readonly<Record<string, unknown>> =>
  typeof x === 'object' && x !== null && !Array.isArray(x);

const show = (x: unknown): string => {
  const text = typeof x === 'string' ? x : (JSON.stringify(x) ?? 'nothing');
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
};

/** A complaint about data; the field holds "file: key". */
export function dataFault(
  ctx: CheckContext,
  key: string,
  code: string,
  got: unknown,
  allowed: string,
  say: string,
): Fault {
  return {
    code,
    field: key === '' ? ctx.file : `${ctx.file}: ${key}`,
    got: show(got),
    allowed,
    say,
    fix: 'Correct the row in data/ and run the data check again.',
  };
}

/** Complaints about one source-bearing object, without its numbers. */
export function sourceFaults(ctx: CheckContext, key: string, x: Readonly<Record<string, unknown>>): Fault[] {
  const faults: Fault[] = [];
  const { source, at, read } = x;
  if (typeof source !== 'string' || source === '')
    faults.push(dataFault(ctx, key, 'DATA_SOURCE', source, 'a key of sources.json', 'The fact names no source.'));
  else if (!ctx.sourceKeys.has(source))
    faults.push(
      dataFault(ctx, key, 'DATA_SOURCE', source, 'a key of sources.json', 'The source is not in sources.json.'),
    );
  if (typeof at !== 'string')
    faults.push(
      dataFault(
        ctx,
        key,
        'DATA_FORM',
        at,
        'a text, empty when the whole is meant',
        'The place in the source is missing.',
      ),
    );
  if (!readMarks.includes(read as string))
    faults.push(dataFault(ctx, key, 'DATA_FORM', read, readMarks.join(', '), 'It does not say how it was come by.'));
  return faults;
}

function numberFaults(ctx: CheckContext, key: string, name: string, x: unknown, limits: Limits): Fault[] {
  if (typeof x !== 'number' || !Number.isFinite(x))
    return [dataFault(ctx, key, 'DATA_FORM', x, 'a number', `"${name}" is not a number.`)];
  if (x < limits.low || x > limits.high)
    return [
      dataFault(
        ctx,
        key,
        'DATA_RANGE',
        x,
        `${limits.low} to ${limits.high}`,
        `"${name}" is outside what this quantity can be.`,
      ),
    ];
  return [];
}

/** Complaints about one fact. limits overrides those of the key. */
export function factFaults(ctx: CheckContext, path: string, key: string, x: unknown, limits?: Limits): Fault[] {
  if (!isRecord(x))
    return [dataFault(ctx, path, 'DATA_FORM', x, 'an object with value or low and high', 'Not a fact.')];
  const faults = sourceFaults(ctx, path, x);
  for (const k of Object.keys(x))
    if (!factKeys.includes(k))
      faults.push(dataFault(ctx, path, 'DATA_FORM', k, factKeys.join(', '), `Unknown part "${k}".`));
  const hasRange = 'low' in x || 'high' in x;
  if (!('value' in x) && !hasRange && !('values' in x))
    faults.push(dataFault(ctx, path, 'DATA_FORM', x, 'value, values, or low and high', 'The fact holds nothing.'));
  if (hasRange && !('low' in x && 'high' in x))
    faults.push(dataFault(ctx, path, 'DATA_FORM', x, 'both low and high', 'Half a range.'));
  if (x.value === null && typeof x.note !== 'string')
    faults.push(dataFault(ctx, path, 'DATA_FORM', null, 'null with a note that says why', 'Unknown without a reason.'));
  if (typeof x.value === 'string' && unitSuffix(key) !== null)
    faults.push(dataFault(ctx, path, 'DATA_FORM', x.value, 'a number', 'The key names a unit but the value is words.'));
  const list = Array.isArray(x.values) ? x.values : [];
  const numeric = hasRange || typeof x.value === 'number' || list.some((v) => typeof v === 'number');
  if (numeric) faults.push(...numericFaults(ctx, path, key, x, limits));
  const others = x.alternatives;
  if (Array.isArray(others)) {
    others.forEach((other, i) => {
      faults.push(...factFaults(ctx, `${path}.alternatives[${i}]`, key, other, limits));
    });
  }
  return faults;
}

function numericFaults(
  ctx: CheckContext,
  path: string,
  key: string,
  x: Readonly<Record<string, unknown>>,
  limits: Limits | undefined,
): Fault[] {
  if (unitSuffix(key) === null)
    return [dataFault(ctx, path, 'DATA_UNIT', key, 'a key that ends in a known unit', 'The key names no known unit.')];
  const range = limits ?? limitsFor(key) ?? { low: -Infinity, high: Infinity };
  const faults: Fault[] = [];
  const { low, high, value } = x;
  if ('low' in x) faults.push(...numberFaults(ctx, path, 'low', low, range));
  if ('high' in x) faults.push(...numberFaults(ctx, path, 'high', high, range));
  if (typeof value === 'number') faults.push(...numberFaults(ctx, path, 'value', value, range));
  if (Array.isArray(x.values)) for (const v of x.values) faults.push(...numberFaults(ctx, path, 'values', v, range));
  if (typeof low === 'number' && typeof high === 'number') {
    if (low > high)
      faults.push(dataFault(ctx, path, 'DATA_ORDER', `${low} > ${high}`, 'low at most high', 'Low is above high.'));
    if (typeof value === 'number' && (value < low || value > high))
      faults.push(
        dataFault(ctx, path, 'DATA_ORDER', value, `${low} to ${high}`, 'The value lies outside its own range.'),
      );
  }
  return faults;
}

/** The good facts of a table and complaints about the rest. */
export function goodFacts(
  ctx: CheckContext,
  at: string,
  x: unknown,
  limits?: (key: string) => Limits | undefined,
): { readonly facts: Readonly<Record<string, Fact>>; readonly faults: Fault[] } {
  if (!isRecord(x))
    return { facts: {}, faults: [dataFault(ctx, at, 'DATA_FORM', x, 'a table of facts', 'Not a table.')] };
  const facts: Record<string, Fact> = {};
  const faults: Fault[] = [];
  for (const [key, fact] of Object.entries(x)) {
    const path = at === '' ? key : `${at}.${key}`;
    const found = factFaults(ctx, path, key, fact, limits?.(key));
    if (found.length === 0) facts[key] = fact as Fact;
    faults.push(...found);
  }
  return { facts, faults };
}
