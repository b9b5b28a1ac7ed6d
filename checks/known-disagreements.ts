// Disagreements that were looked into and left standing. Each is printed with its reason on every run and on the
// evidence page. An entry that no longer disagrees makes the run fail, so that the list cannot rot.
// Facts of the trade and whole boxes carry theirs beside their rows.
import { knownBoxDisagreements } from './box/known-box-disagreements.ts';
import type { KnownDisagreement } from './check-row.ts';
import { readTradeFacts } from './husbandry/trade-facts.ts';
import { readScenarios } from './planning/scenarios.ts';

export const knownDisagreements: readonly KnownDisagreement[] = [
  {
    id: 'P-130',
    quantity: 'shahNatural',
    reason:
      "The comparison code took the full density of damp air and C = 40 for small lifts. The author's printed table (rows SHAH-1 to SHAH-9) is met to 0.3 % with the density of the dry air and C = 35 throughout, so we follow the table.",
  },
  {
    id: 'P-131',
    quantity: 'shahNatural',
    reason: 'Same difference of definition as P-130: by full density the air over the water would not rise at all.',
  },
  ...knownBoxDisagreements,
  ...readTradeFacts().known,
  ...readScenarios().known,
];
