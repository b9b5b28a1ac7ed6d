// Which requirements of a release does this branch hold absolute, and which may a manager override? Set as shop values
// with who, when and why. What the program or a law holds absolute is not the shop's to open.
import { overlayFaults } from '../husbandry/overlay-faults.ts';
import type { ShopValue } from '../husbandry/shop-value.ts';
import { isRequirementId, type RequirementId, type RequirementRow } from '../proving/release/requirement.ts';
import { allRequirements } from '../records/release-facts.ts';
import type { Fault } from '../shared/fault.ts';

export type ReleasePolicy = Readonly<Partial<Record<RequirementId, 'absolute' | 'manager'>>>;

const start = 'policy.release.';
const wordsOf = (row: RequirementRow): readonly string[] =>
  row.absolute === 'always' ? ['absolute'] : ['absolute', 'manager'];

/** The requirement that a path of a shop value is about, or null. */
export function releasePolicyAt(path: string): RequirementRow | null {
  const id = path.startsWith(start) ? path.slice(start.length) : '';
  return isRequirementId(id) ? (allRequirements().find((row) => row.id === id) ?? null) : null;
}

/** As shipped. */
export const shippedPolicy = (row: RequirementRow): 'absolute' | 'manager' =>
  row.absolute === 'no' ? 'manager' : 'absolute';

/** Faults: "OVERLAY_WORD", "OVERLAY_PARTS"; none when the value may be kept. */
export function releasePolicyFaults(row: RequirementRow, value: ShopValue['value']): readonly Fault[] {
  const path = start + row.id;
  const parts = Object.keys(value);
  if (parts.join() !== 'value') return [overlayFaults.parts(path, parts, ['value'])];
  const allowed = wordsOf(row);
  const got = String(value.value);
  return allowed.includes(got) ? [] : [overlayFaults.word(path, got, allowed.join(', '))];
}

export const releasePolicy = (values: readonly ShopValue[]): ReleasePolicy =>
  Object.fromEntries(
    values.flatMap(({ path, value }) => {
      const row = releasePolicyAt(path);
      return row === null || (value.value !== 'absolute' && value.value !== 'manager') ? [] : [[row.id, value.value]];
    }),
  );

/** How a requirement stands in this branch: as shipped, or as the shop set it, with who, when and why. */
export interface PolicyLine {
  readonly id: RequirementId;
  readonly absolute: 'always' | 'absolute' | 'manager';
  readonly set: { readonly by: string; readonly at: string; readonly why: string } | null;
}

export const policyLines = (values: readonly ShopValue[]): readonly PolicyLine[] =>
  allRequirements().map((row) => {
    const own = values.find(({ path }) => path === start + row.id);
    if (row.absolute === 'always') return { id: row.id, absolute: 'always', set: null };
    const absolute = releasePolicy(own ? [own] : [])[row.id] ?? shippedPolicy(row);
    return { id: row.id, absolute, set: own ? { by: own.by, at: own.at, why: own.why } : null };
  });
