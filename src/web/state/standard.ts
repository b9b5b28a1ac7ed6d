// By which space standard this enquiry is judged: the one that the person chose, else the shop's, else the usual one.
import { type ShopValue, standardPolicy } from '../../husbandry/shop-value.ts';
import { noStandard, usualHomeStandardId } from '../../husbandry/usual-standard.ts';
import type { Answers } from './document.ts';

/** What the person named: an id, "none", or undefined when it is left to the shop. */
export function namedStandard({ standardId, standardChosen }: Answers): string | undefined {
  // An enquiry kept before the choice was marked has chosen when it differs from the usual.
  const chosen = standardChosen ?? standardId !== usualHomeStandardId;
  return chosen ? (standardId ?? noStandard) : undefined;
}

export function standardOf(answers: Answers, values: readonly ShopValue[]): string {
  const policy = values.find(({ path }) => path === standardPolicy)?.value.value;
  return namedStandard(answers) ?? (typeof policy === 'string' ? policy : usualHomeStandardId);
}
