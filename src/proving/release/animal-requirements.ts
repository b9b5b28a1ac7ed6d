// What the animal has to be before it goes: fit in every finding of its own record, and whole in the register.
import type { FitnessAnswer, FitnessFinding } from '../../animal/fitness.ts';
import type { HeadingFinding } from '../../animal/register.ts';
import type { LawRule, Place } from '../../husbandry/law-rule.ts';
import type { Answered } from './home-requirements.ts';
import type { AbsoluteBy, RequirementAnswer, Statement } from './requirement.ts';

export type AnimalRequirementId = FitnessFinding['id'] | 'register';

export interface AnimalInput {
  readonly fitness: FitnessAnswer;
  readonly register: readonly HeadingFinding[];
  /** Day and person of the last look-over. */
  readonly lookedOver: { readonly on: string; readonly by: string } | null;
  readonly law: readonly LawRule[];
  readonly places: readonly Place[];
  /** What was said of a running treatment: the word of a vet that it is fit to go. */
  readonly treatmentSaid: Statement | null;
}

const answerOf: Readonly<Record<FitnessFinding['answer'], RequirementAnswer>> = {
  clear: 'met',
  hold: 'not-met',
  vet: 'not-met',
  'not-known': 'not-known',
};

const fitnessIds: readonly FitnessFinding['id'][] = [
  'examination',
  'mass',
  'feeding',
  'slough',
  'quarantine',
  'mites',
  'treatment',
  'settled',
];

export type AnimalAnswered = Answered & { readonly absolute?: AbsoluteBy };

export function animalRequirements(input: AnimalInput): Readonly<Record<AnimalRequirementId, AnimalAnswered>> {
  const each = fitnessIds.map((id) => [id, id === 'treatment' ? treatment(input) : fromFitness(input, id)] as const);
  const found = Object.fromEntries(each) as Readonly<Record<FitnessFinding['id'], AnimalAnswered>>;
  return { ...found, register: register(input) };
}

function fromFitness({ fitness, lookedOver }: AnimalInput, id: FitnessFinding['id']): Answered {
  const evidence = {
    at: id === 'examination' ? 'look-over' : 'animal',
    on: id === 'examination' ? (lookedOver?.on ?? null) : null,
    by: id === 'examination' ? (lookedOver?.by ?? null) : null,
  } as const;
  // An animal that has left has no findings any more: it cannot go a second time.
  if (fitness.answer === 'gone') return { answer: 'not-met', reasons: [{ key: 'animal.gone' }], evidence };
  const finding = fitness.findings.find((one) => one.id === id);
  if (finding === undefined) return { answer: 'not-known', reasons: [{ key: 'animal.noFinding' }], evidence };
  return {
    answer: answerOf[finding.answer],
    reasons: finding.reasons.map((reason) => ({ key: 'animal', reason })),
    evidence,
  };
}

/** A running treatment: forbidden where the law of either place says so, else only on a vet's word that is on record. */
function treatment(input: AnimalInput): AnimalAnswered {
  const plain = fromFitness(input, 'treatment');
  if (input.fitness.answer === 'gone' || plain.answer === 'met') return plain;
  const forbidding = input.law.find(
    ({ effect, places }) =>
      effect.kind === 'under-treatment' &&
      effect.answer === 'blocked' &&
      places.some((place) => input.places.includes(place)),
  );
  if (forbidding !== undefined) {
    const place = forbidding.places.find((one) => input.places.includes(one)) ?? '';
    const reasons = [{ key: 'treatment.forbidden', blanks: { place: `#place.${place}` } }, ...plain.reasons] as const;
    return { ...plain, reasons, absolute: 'law' };
  }
  const said = input.treatmentSaid;
  if (said?.answer !== 'yes') return plain;
  return {
    answer: 'met',
    reasons: [{ key: 'treatment.vetWord', blanks: { text: said.text } }, ...plain.reasons],
    evidence: { at: 'statement', on: said.at, by: said.by },
  };
}

function register({ register: headings }: AnimalInput): Answered {
  const missing = headings.filter((one) => one.state === 'missing');
  const evidence = { at: 'animal', on: null, by: null } as const;
  return missing.length === 0
    ? { answer: 'met', reasons: [{ key: 'register.met' }], evidence }
    : {
        answer: 'not-met',
        reasons: missing.map(({ heading }) => ({
          key: 'register.missing',
          blanks: { en: heading.say.en, de: heading.say.de },
        })),
        evidence,
      };
}
