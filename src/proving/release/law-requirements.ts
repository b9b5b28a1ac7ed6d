// What the law of the desk's place and of the home's place ask before this animal goes to this person: both hold.
// Leaves out duties that do not stop a release; they are shown with the findings of each place.
import { type LawFinding, lawChecks, type SaleFacts } from '../../husbandry/law-checks.ts';
import type { LawEffect, LawRule, Place } from '../../husbandry/law-rule.ts';
import type { Answered } from './home-requirements.ts';
import type { AbsoluteBy, ReleaseReason, Statement } from './requirement.ts';

export type LawRequirementId = 'home-place' | 'buyer-age' | 'species-lawful' | 'papers' | 'licences';

export interface LawInput {
  readonly law: readonly LawRule[];
  readonly speciesId: string;
  readonly annex: string | null;
  readonly underTreatment: boolean;
  /** Number of the paper in the register; null = nothing was entered. */
  readonly papersThere: boolean | null;
  readonly deskPlace: Place;
  readonly said: Readonly<Partial<Record<LawRequirementId | 'treatment', Statement>>>;
  /** Age below which a seller asks for a guardian where no rule of the place was read. */
  readonly usualAgeYears: number;
  readonly today: string;
}

export interface PlaceLaw {
  readonly place: Place;
  readonly role: 'desk' | 'home';
  /** stops: the rule can stop the release; else it is a duty of the seller that goes with it. */
  readonly findings: readonly (LawFinding & { readonly stops: boolean })[];
}

/** The home's place as it was said; null while nobody has said. */
export const homePlaceOf = (said: LawInput['said']): Place | null =>
  said['home-place']?.answer === 'yes' ? said['home-place'].place : null;

/** Places whose law holds: one when desk and home lie in the same. */
export function placesOf(input: Pick<LawInput, 'deskPlace' | 'said'>): readonly Place[] {
  const home = homePlaceOf(input.said);
  return home === null || home === input.deskPlace ? [input.deskPlace] : [input.deskPlace, home];
}

/** The age that the buyer is asked against: the highest that a rule of either place names. */
export function ageAsked(input: Pick<LawInput, 'law' | 'deskPlace' | 'said' | 'usualAgeYears'>): number {
  const places = placesOf(input);
  const years = input.law.flatMap(({ effect, places: at }) =>
    effect.kind === 'buyer-age' && at.some((place) => places.includes(place)) ? [effect.years] : [],
  );
  return years.length === 0 ? input.usualAgeYears : Math.max(...years);
}

const duties: readonly LawEffect['kind'][] = ['duty', 'keep-records', 'written-information'];

export function lawOfPlaces(input: LawInput): readonly PlaceLaw[] {
  return placesOf(input).map((place, i) => ({
    place,
    role: i === 0 ? 'desk' : 'home',
    findings: lawChecks(input.law, saleAt(input, place), input.today).map((finding) => ({
      ...finding,
      stops: !duties.includes(input.law.find((rule) => rule.id === finding.ruleId)?.effect.kind ?? 'duty'),
    })),
  }));
}

function saleAt(input: LawInput, place: Place): SaleFacts {
  const { said } = input;
  const age = said['buyer-age'];
  const yes = (id: LawRequirementId | 'treatment'): boolean | null => {
    const answer = said[id]?.answer;
    return answer === 'yes' ? true : answer === 'no' ? false : null;
  };
  const asked = age?.years ?? null;
  const old = yes('buyer-age');
  return {
    place,
    speciesId: input.speciesId,
    annex: input.annex,
    // Only "old enough or not" is known and kept, never the age.
    buyerAgeYears: asked === null || old === null ? null : old ? asked : asked - 1,
    guardianConsents: null,
    underTreatment: input.underTreatment,
    vetSaysFit: yes('treatment'),
    papersThere: input.papersThere,
    bothLicensed: yes('licences'),
  };
}

export type LawAnswered = Answered & { readonly absolute?: AbsoluteBy };

export function lawRequirements(input: LawInput): Readonly<Record<LawRequirementId, LawAnswered>> {
  return {
    'home-place': homePlace(input),
    'buyer-age': buyerAge(input),
    'species-lawful': fromRules(input, 'species-lawful', ['species-ban', 'species-ask']),
    papers: fromRules(input, 'papers', ['annex']),
    licences: fromRules(input, 'licences', ['both-licensed']),
  };
}

function homePlace({ said, deskPlace }: LawInput): Answered {
  const place = homePlaceOf(said);
  const by = said['home-place'];
  if (place === null || by === undefined)
    return {
      answer: 'not-known',
      reasons: [{ key: 'home-place.open' }],
      evidence: { at: 'statement', on: null, by: null },
    };
  const key = place === deskPlace ? 'home-place.same' : 'home-place.other';
  return {
    answer: 'met',
    reasons: [{ key, blanks: { home: `#place.${place}`, desk: `#place.${deskPlace}` } }],
    evidence: { at: 'statement', on: by.at, by: by.by },
  };
}

function buyerAge(input: LawInput): LawAnswered {
  const years = ageAsked(input);
  const said = input.said['buyer-age'];
  if (said === undefined || said.answer === 'open')
    return {
      answer: 'not-known',
      reasons: [{ key: 'buyer-age.open', blanks: { years } }],
      evidence: { at: 'statement', on: null, by: null },
    };
  const evidence = { at: 'statement', on: said.at, by: said.by } as const;
  const blanks = { years: said.years ?? 0 };
  // The home's place may have been said afterwards, with a higher age.
  if (said.answer === 'yes' && blanks.years < years)
    return { answer: 'not-known', reasons: [{ key: 'buyer-age.open', blanks: { years } }], evidence };
  if (said.answer === 'yes') return { answer: 'met', reasons: [{ key: 'buyer-age.met', blanks }], evidence };
  const bound = input.law.some(
    ({ effect, places }) => effect.kind === 'buyer-age' && places.some((place) => placesOf(input).includes(place)),
  );
  const answered: Answered = { answer: 'not-met', reasons: [{ key: 'buyer-age.not-met', blanks }], evidence };
  return bound ? { ...answered, absolute: 'law' } : answered;
}

/** Rules of some kinds in both places: blocked ends it, "ask" needs somebody who asked and says so. */
function fromRules(
  input: LawInput,
  id: 'species-lawful' | 'papers' | 'licences',
  kinds: readonly LawEffect['kind'][],
): LawAnswered {
  const ids = new Set(input.law.filter((rule) => kinds.includes(rule.effect.kind)).map((rule) => rule.id));
  const found = lawOfPlaces(input).flatMap(({ place, findings }) =>
    findings.filter((one) => ids.has(one.ruleId)).map((one) => ({ ...one, place })),
  );
  const said = input.said[id as LawRequirementId];
  const blocked = found.filter((one) => one.answer === 'blocked');
  const asks = found.filter((one) => one.answer === 'ask');
  const evidence = { at: 'law', on: found[0]?.dateChecked ?? null, by: null } as const;
  const why = (key: 'blocked' | 'ask', of: typeof found): readonly ReleaseReason[] =>
    of.map((one) => ({ key: `${id}.${key}`, blanks: { place: `#place.${one.place}`, rule: one.title } }));
  if (blocked.length > 0) return { answer: 'not-met', reasons: why('blocked', blocked), evidence, absolute: 'law' };
  if (id === 'species-lawful' && said?.answer === 'no')
    return {
      answer: 'not-met',
      reasons: [{ key: 'species-lawful.no', blanks: { text: said.text } }],
      evidence: { at: 'statement', on: said.at, by: said.by },
    };
  if (asks.length > 0) {
    // Whoever asked the authority says what came of it; papers and licences answer the rule itself.
    if (id === 'species-lawful' && said?.answer === 'yes')
      return {
        answer: 'met',
        reasons: [{ key: 'species-lawful.asked', blanks: { text: said.text } }],
        evidence: { at: 'statement', on: said.at, by: said.by },
      };
    return { answer: 'not-known', reasons: why('ask', asks), evidence };
  }
  if (homePlaceOf(input.said) === null) return { answer: 'not-known', reasons: [{ key: 'law.homeOpen' }], evidence };
  return { answer: 'met', reasons: [{ key: found.length > 0 ? `${id}.met` : 'law.noRule' }], evidence };
}
