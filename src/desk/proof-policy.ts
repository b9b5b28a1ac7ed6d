// Which rule does this branch prove homes by? Each part of it that the shop set is a policy with who, when and why; the
// rest is the default. Leaves out judging by it (../proving/verdict/).
import { defaultRule, type ProofRule, type RuleSetting, type RuleSettingKey } from '../proving/verdict/rule.ts';
import type { Fault } from '../shared/fault.ts';
import { overlayFaults } from './overlay-faults.ts';
import type { ShopValue } from './shop-values.ts';

/** Limits of what a shop may ask; our choice: wide enough for any shop, narrow enough to catch a slip of the keys. */
export const proofPolicies: Readonly<
  Record<string, { readonly key: RuleSettingKey; readonly low: number; readonly high: number }>
> = {
  'policy.proofNights': { key: 'nights', low: 1, high: 14 },
  'policy.proofLongestIntervalS': { key: 'longestIntervalS', low: 60, high: 3600 },
  'policy.proofLongestGapS': { key: 'longestGapS', low: 600, high: 86_400 },
  'policy.proofHandReadingsPerDay': { key: 'handReadingsPerDay', low: 1, high: 12 },
};

/** Faults: "OVERLAY_NUMBER", "OVERLAY_PARTS"; none when the value may be kept. */
export function proofPolicyFaults(path: string, value: ShopValue['value']): readonly Fault[] {
  const policy = proofPolicies[path];
  if (policy === undefined) return [];
  const parts = Object.keys(value);
  if (parts.join() !== 'value') return [overlayFaults.parts(path, parts, ['value'])];
  const got = value.value;
  const { low, high } = policy;
  const fits = typeof got === 'number' && Number.isInteger(got) && got >= low && got <= high;
  return fits ? [] : [overlayFaults.number(path, String(got), low, high)];
}

export interface BranchRule {
  readonly rule: ProofRule;
  readonly settings: readonly RuleSetting[];
}

/** The default with the branch's own settings over it. */
export function branchRule(values: readonly ShopValue[]): BranchRule {
  const settings = values.flatMap(({ path, value, by, at, why }): RuleSetting[] => {
    const policy = proofPolicies[path];
    const set = value.value;
    if (policy === undefined || typeof set !== 'number') return [];
    return [{ key: policy.key, value: set, by, at, why }];
  });
  return { rule: { ...defaultRule, ...Object.fromEntries(settings.map((s) => [s.key, s.value])) }, settings };
}
