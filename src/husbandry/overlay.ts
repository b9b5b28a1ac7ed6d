// Lays a shop's own values over the facts, and remembers each so that it is printed as the shop's, not as the source's.
// Leaves out: who may do this (desk) and where overlays are kept (records).
import type { Fault } from '../shared/fault.ts';
import type { Facts, MaterialFacts, Overlaid, Overlay } from './fact.ts';
import { type CheckContext, factFaults, isRecord } from './fact-check.ts';

type Tree = Readonly<Record<string, unknown>>;

export interface OverlaidFacts {
  readonly facts: Facts;
  readonly faults: readonly Fault[];
}

const fault = (overlay: Overlay, code: string, allowed: string, say: string): Fault => ({
  code,
  field: overlay.path,
  got: JSON.stringify(overlay.value) ?? 'nothing',
  allowed,
  say,
  fix: 'Correct or remove this shop value.',
});

function valueAt(tree: unknown, keys: readonly string[]): unknown {
  return keys.reduce<unknown>((at, key) => (isRecord(at) ? at[key] : undefined), tree);
}

function withValue(tree: Tree, keys: readonly string[], value: unknown): Tree {
  const [first, ...rest] = keys;
  if (first === undefined) return tree;
  const below = tree[first];
  return { ...tree, [first]: rest.length === 0 ? value : withValue(isRecord(below) ? below : {}, rest, value) };
}

/** Complaints about the fact that an overlay changes, as it would stand afterwards. */
function changedFact(facts: Facts, tree: Tree, keys: readonly string[], overlay: Overlay): readonly Fault[] {
  const ctx: CheckContext = { file: 'overlay', sourceKeys: new Set(Object.keys(facts.sources)) };
  for (let end = keys.length; end > 0; end -= 1) {
    const x = valueAt(tree, keys.slice(0, end));
    if (isRecord(x) && 'source' in x && 'read' in x)
      return factFaults(ctx, overlay.path, keys[end - 1] ?? '', x).map((f) => ({ ...f, field: overlay.path }));
  }
  return [fault(overlay, 'DATA_LINK', 'the path of a fact', 'The path does not lead to a fact with a source.')];
}

/** Tables that the program hands on without sources follow the facts they were made from. */
function inStep(facts: Facts): Facts {
  const materials = Object.fromEntries(
    Object.entries(facts.materials).map(([id, material]) => {
      const row: MaterialFacts | undefined = facts.materialFacts[id];
      const numbers = Object.entries(row?.facts ?? {}).filter(([, f]) => typeof f.value === 'number');
      return [id, { ...material, ...Object.fromEntries(numbers.map(([key, f]) => [key, f.value])) }];
    }),
  ) as Facts['materials'];
  return { ...facts, materials };
}

/** Facts with the shop's values; a value that cannot be is refused and named, the rest still serves.
 *  @param overlays rows of {path, value, who, when, why}; path below the facts, e.g. "species.corn.all.rhPct.low" */
export function applyOverlay(facts: Facts, overlays: readonly Overlay[]): OverlaidFacts {
  let tree = facts as unknown as Tree;
  const faults: Fault[] = [];
  const overlaid: Overlaid[] = [...facts.overlaid];
  for (const overlay of overlays) {
    const keys = overlay.path.split('.');
    const was = valueAt(tree, keys);
    if (was === undefined || ['sources', 'overlaid', 'materials'].includes(keys[0] ?? '')) {
      faults.push(fault(overlay, 'DATA_LINK', 'the path of a fact', 'No fact stands at this path.'));
      continue;
    }
    if (overlay.who === '' || overlay.why === '' || !/^\d{4}-\d{2}-\d{2}/.test(overlay.when)) {
      faults.push(fault(overlay, 'DATA_FORM', 'who, when and why', 'A shop value needs who set it, when and why.'));
      continue;
    }
    const next = withValue(tree, keys, overlay.value);
    const found = changedFact(facts, next, keys, overlay);
    if (found.length > 0) {
      faults.push(...found);
      continue;
    }
    tree = next;
    overlaid.push({ ...overlay, was });
  }
  return { facts: inStep({ ...(tree as unknown as Facts), overlaid }), faults };
}

/** Shop values below a path, for printing beside what was computed from them. */
export const overlaidBelow = (facts: Facts, path: string): readonly Overlaid[] =>
  facts.overlaid.filter((o) => o.path === path || o.path.startsWith(`${path}.`));
