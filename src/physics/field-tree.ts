// How do the rows of enclosure-fields.ts hang together, and how is a limit said in words?
// Leaves out: reading a value (field-reader.ts) and writing the schema (field-schema.ts).
import type { Field } from './enclosure-fields.ts';

export interface FieldNode {
  readonly field: Field;
  /** Children of an object by key. */
  readonly children: ReadonlyMap<string, FieldNode>;
  /** The entry of a list. */
  readonly item: FieldNode | null;
}

interface Growing {
  field: Field;
  children: Map<string, Growing>;
  item: Growing | null;
}

/** "heaters[].probe.xM" -> heaters, [], probe, xM. */
const stepsOf = (path: string): string[] => path.replaceAll('[]', '.[]').split('.').filter(Boolean);

/** The tree of a field table.
 *  @param fields rows, parents before children; the first one is the whole file
 *  Throws when a row has no parent: that is our own mistake, not the user's. */
export function fieldTree(fields: readonly Field[]): FieldNode {
  const [first, ...rest] = fields;
  if (first === undefined || first.path !== '') throw new Error('the first field must be the whole file');
  const root: Growing = { field: first, children: new Map(), item: null };
  for (const field of rest) {
    const steps = stepsOf(field.path);
    const last = steps.pop() ?? '';
    let at: Growing | null | undefined = root;
    for (const step of steps) at = step === '[]' ? at?.item : at?.children.get(step);
    if (!at) throw new Error(`field ${field.path} has no parent row`);
    const node: Growing = { field, children: new Map(), item: null };
    if (last === '[]') at.item = node;
    else at.children.set(last, node);
  }
  return root;
}

const withUnit = (value: number, unit: string): string => `${value}${unit === '' ? '' : ` ${unit}`}`;

/** What a field allows, in words with its unit: "0.2 to 4 m", "ceramic | plastic | none". */
export function allowedInWords(field: Field): string {
  const orNull = field.nullable ? ' or null' : '';
  const { low, high, unit } = field;
  const limits = low === high ? `${low}` : `${low} to ${high}`;
  switch (field.kind) {
    case 'number':
      return unit === 'share 0 to 1'
        ? `a share from ${limits}${orNull}`
        : `${low} to ${withUnit(high ?? 0, unit)}${orNull}`;
    case 'list':
      return `a list of ${limits} entries${orNull}`;
    case 'text':
      return `text of ${limits} characters${orNull}`;
    case 'id':
      return `a name of ${limits} letters, digits, spaces, "-", "_" or "."${orNull}`;
    case 'word':
      return `${(field.words ?? []).join(' | ')}${orNull}`;
    case 'constant':
      return (field.words ?? []).map((w) => JSON.stringify(w)).join(' | ');
    case 'flag':
      return `true | false${orNull}`;
    case 'object':
      return `an object { ... }${orNull}`;
  }
}
