// Which rule does this branch prove homes by? Each part of it that the shop set is a policy with who, when and why; the
// rest is the default. Leaves out judging by it (../proving/verdict/).
import type { ShopValue } from '../husbandry/shop-value.ts';
import { defaultRule, type ProofRule, type RuleSetting, type RuleSettingKey } from '../proving/verdict/rule.ts';

/** Policies of data/policies.json that are parts of the rule; what is possible stands there. */
const proofPolicies: Readonly<Record<string, RuleSettingKey>> = {
  'policy.proofNights': 'nights',
  'policy.proofLongestIntervalS': 'longestIntervalS',
  'policy.proofLongestGapS': 'longestGapS',
  'policy.proofHandReadingsPerDay': 'handReadingsPerDay',
};

export interface BranchRule {
  readonly rule: ProofRule;
  readonly settings: readonly RuleSetting[];
}

/** The default with the branch's own settings over it. */
export function branchRule(values: readonly ShopValue[]): BranchRule {
  const settings = values.flatMap(({ path, value, by, at, why }): RuleSetting[] => {
    const key = proofPolicies[path];
    const set = value.value;
    if (key === undefined || typeof set !== 'number') return [];
    return [{ key, value: set, by, at, why }];
  });
  return { rule: { ...defaultRule, ...Object.fromEntries(settings.map((s) => [s.key, s.value])) }, settings };
}
