// May this animal go to this person in this place? Allowed, blocked or ask, each with its reason and the date of its source.
// Leaves out: everything the law says that data/law.json does not hold. It never replaces the council or a lawyer.
import type { LawRule } from './law-rule.ts';

/** Rules whose review date has passed.
 *  @param today ISO date, handed in because this room reads no clock */
export const staleRules = (rules: readonly LawRule[], today: string): readonly LawRule[] =>
  rules.filter((rule) => rule.reviewBy < today);
