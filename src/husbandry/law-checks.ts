// May this animal go to this person in this place? Allowed, blocked or ask, each with its reason and the date of its source.
// Leaves out: everything the law says that data/law.json does not hold. It never replaces the council or a lawyer.

import { coded, type Saying, type Told, told } from './coded.ts';
import type { LawRule, Place } from './law-rule.ts';
import type { ReadMark } from './need.ts';
import type { OwnMark } from './shop-value.ts';

export type LawAnswer = 'allowed' | 'blocked' | 'ask';

/** What is known of a sale; null = nobody has asked yet. */
export interface SaleFacts {
  readonly place: Place;
  readonly speciesId: string;
  /** EU or national annex of the species, "A", "B" or "none". */
  readonly annex: string | null;
  readonly buyerAgeYears: number | null;
  readonly guardianConsents: boolean | null;
  readonly underTreatment: boolean | null;
  /** A vet has said in writing that it is fit to go. */
  readonly vetSaysFit: boolean | null;
  /** The papers the annex asks for are there: certificate or proof of origin. */
  readonly papersThere: boolean | null;
  /** Seller and buyer both hold the keeper's licence of the place. */
  readonly bothLicensed: boolean | null;
}

export interface LawFinding {
  readonly ruleId: string;
  readonly title: string;
  readonly answer: LawAnswer;
  readonly reason: string;
  /** What to do before it becomes "allowed"; empty when there is nothing. */
  readonly todo: string;
  /** Reason and what to do, without a language. */
  readonly told: { readonly reason: Told; readonly todo: Told | null };
  readonly source: string;
  readonly read: ReadMark;
  readonly dateOfText: string | null;
  readonly dateChecked: string;
  /** Past its review date: shown amber, and never a plain "allowed". */
  readonly stale: boolean;
  readonly secondHand: boolean;
  readonly decides: string;
  /** Set when the shop's own value stands in this rule. */
  readonly own?: OwnMark;
}

type Outcome = readonly [answer: LawAnswer, reason: Saying, todo?: Saying];

const say = coded('law', {
  old: (years: string) => `The buyer is ${years} or older.`,
  young: (years: string) => `The buyer is younger than ${years}.`,
  guardian: 'A guardian consents.',
  noGuardian: 'The buyer is too young without a guardian.',
  askAge: 'The age of the buyer has not been asked.',
  healthy: 'The animal is not under treatment.',
  treated: 'The animal is under treatment.',
  vetFit: 'Under treatment, but a vet says it is fit and the buyer is told.',
  askTreatment: 'Whether the animal is under treatment has not been entered.',
  banned: 'This species may not be sold here.',
  notBanned: 'This species is not on the list.',
  check: 'This species needs a look at the rule before it goes.',
  notConcerned: 'This species is not concerned.',
  papers: 'The papers are there.',
  noPapers: 'The papers are missing.',
  askPapers: 'Whether the papers are there has not been entered.',
  licensed: 'Seller and buyer are licensed.',
  unlicensed: 'Seller or buyer has no licence.',
  askLicence: 'Whether both are licensed has not been entered.',
  duty: 'A duty of the seller; it does not stop the sale.',
  proof: 'Ask for proof of age.',
  adultBuys: 'An adult may buy instead and answer for the animal.',
  askConsent: 'Ask for the consent of a guardian in writing.',
  mustConsent: 'A guardian must consent.',
  lookTreatment: 'Look at the treatment record.',
  waitTreatment: 'Wait until the treatment has ended.',
  tellFirst: 'Tell the buyer the details and the reasons first, in writing.',
  askVet: 'Ask the vet in writing whether it is fit to go.',
  askWho: (who: string) => `Ask: ${who}.`,
  findPapers: 'Find the papers.',
  seeLicences: 'See both licences.',
});

const names = coded('name', { fact: (text: string) => text });

const open = (known: boolean | null, yes: Outcome, no: Outcome, ask: Outcome): Outcome =>
  known === null ? ask : known ? yes : no;

function buyerAge(sale: SaleFacts, years: number, withGuardian: boolean): Outcome {
  if (sale.buyerAgeYears === null) return ['ask', say.askAge, say.proof];
  if (sale.buyerAgeYears >= years) return ['allowed', say.old(String(years))];
  if (!withGuardian) return ['blocked', say.young(String(years)), say.adultBuys];
  const ask: Outcome = ['ask', say.noGuardian, say.askConsent];
  return open(sale.guardianConsents, ['allowed', say.guardian], ['blocked', say.noGuardian, say.mustConsent], ask);
}

function treatment(sale: SaleFacts, answer: 'blocked' | 'vet-advice'): Outcome {
  if (sale.underTreatment === null) return ['ask', say.askTreatment, say.lookTreatment];
  if (!sale.underTreatment) return ['allowed', say.healthy];
  if (answer === 'blocked') return ['blocked', say.treated, say.waitTreatment];
  if (sale.vetSaysFit) return ['allowed', say.vetFit, say.tellFirst];
  return ['blocked', say.treated, say.askVet];
}

function outcome(rule: LawRule, sale: SaleFacts): Outcome {
  const { effect } = rule;
  switch (effect.kind) {
    case 'buyer-age':
      return buyerAge(sale, effect.years, effect.withGuardian);
    case 'under-treatment':
      return treatment(sale, effect.answer);
    case 'species-ban':
      return effect.speciesIds.includes(sale.speciesId) ? ['blocked', say.banned] : ['allowed', say.notBanned];
    case 'species-ask':
      return effect.speciesIds === null || effect.speciesIds.includes(sale.speciesId)
        ? ['ask', say.check, say.askWho(names.fact(rule.decides))]
        : ['allowed', say.notConcerned];
    case 'annex':
      return sale.annex !== effect.annex
        ? ['allowed', say.notConcerned]
        : open(
            sale.papersThere,
            ['allowed', say.papers],
            ['blocked', say.noPapers],
            ['ask', say.askPapers, say.findPapers],
          );
    case 'both-licensed':
      return open(
        sale.bothLicensed,
        ['allowed', say.licensed],
        ['blocked', say.unlicensed],
        ['ask', say.askLicence, say.seeLicences],
      );
    case 'keep-records':
    case 'written-information':
    case 'duty':
      return ['allowed', say.duty, names.fact(rule.say)];
  }
}

/** Rules whose review date has passed.
 *  @param today ISO date, handed in because this room reads no clock */
export const staleRules = (rules: readonly LawRule[], today: string): readonly LawRule[] =>
  rules.filter((rule) => rule.reviewBy < today);

/** Every rule of a place against one sale, blocked ones first. A stale rule that would allow says "ask" instead.
 *  @param today ISO date */
export function lawChecks(rules: readonly LawRule[], sale: SaleFacts, today: string): readonly LawFinding[] {
  const order: readonly LawAnswer[] = ['blocked', 'ask', 'allowed'];
  const stale = new Set(staleRules(rules, today));
  return rules
    .filter((rule) => rule.places.includes(sale.place))
    .map((rule): LawFinding => {
      const [fresh, reason, todo] = outcome(rule, sale);
      const old = stale.has(rule);
      const answer = old && fresh === 'allowed' && rule.effect.kind !== 'duty' ? 'ask' : fresh;
      const { id: ruleId, title, source, read, dateOfText, dateChecked, secondHand, decides } = rule;
      return {
        ruleId,
        title,
        answer,
        reason: reason.en,
        todo: todo?.en ?? '',
        told: { reason: told(reason), todo: todo === undefined ? null : told(todo) },
        source,
        read,
        dateOfText,
        dateChecked,
        stale: old,
        secondHand,
        decides,
        ...(rule.own ? { own: rule.own } : {}),
      };
    })
    .sort((a, b) => order.indexOf(a.answer) - order.indexOf(b.answer));
}

/** One answer for the sale: blocked beats ask beats allowed; no rule at all means that we do not know. */
export function saleAnswer(findings: readonly LawFinding[]): LawAnswer {
  if (findings.length === 0) return 'ask';
  if (findings.some((f) => f.answer === 'blocked')) return 'blocked';
  return findings.some((f) => f.answer === 'ask') ? 'ask' : 'allowed';
}
