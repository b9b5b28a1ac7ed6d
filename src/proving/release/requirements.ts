// May this animal go to this home? Every requirement with its answer, reasons and evidence, and whether the door is open.
// Leaves out keeping anything, and who may act (desk/).
import { type AnimalInput, animalRequirements } from './animal-requirements.ts';
import { type Answered, type HomeInput, homeRequirements } from './home-requirements.ts';
import { type LawInput, type LawRequirementId, lawRequirements, placesOf } from './law-requirements.ts';
import type {
  AbsoluteBy,
  Override,
  RequirementFinding,
  RequirementId,
  RequirementRow,
  Statement,
} from './requirement.ts';

export interface ReleaseInput {
  readonly rows: readonly RequirementRow[];
  readonly home: HomeInput;
  readonly animal: Omit<AnimalInput, 'law' | 'places' | 'treatmentSaid'>;
  readonly law: Omit<LawInput, 'said'>;
  /** The enquiry says that the risks to the household were explained. */
  readonly householdExplained: boolean;
  /** The newest of each requirement. */
  readonly statements: Readonly<Partial<Record<RequirementId, Statement>>>;
  readonly overrides: Readonly<Partial<Record<RequirementId, Override>>>;
  /** What the shop made absolute, or left to its managers. */
  readonly policy: Readonly<Partial<Record<RequirementId, 'absolute' | 'manager'>>>;
}

export interface ReleaseAnswer {
  readonly findings: readonly RequirementFinding[];
  /** Every requirement stands: the animal may go. */
  readonly open: boolean;
  /** First requirement that does not stand; null when all do. */
  readonly next: RequirementId | null;
}

/** Checks: laws in requirements.test.ts. */
export function releaseAnswer(input: ReleaseInput): ReleaseAnswer {
  const answers = answersOf(input);
  const findings = input.rows.map((row): RequirementFinding => {
    const { answer, reasons, evidence, absolute: byLaw } = answers[row.id];
    const absolute = absoluteBy(row, input.policy[row.id], byLaw);
    const override = input.overrides[row.id] ?? null;
    return {
      id: row.id,
      group: row.group,
      answer,
      absolute,
      reasons,
      evidence,
      statement: input.statements[row.id] ?? null,
      override,
      stands: answer === 'met' || (absolute === null && override !== null && covers(override, answer)),
      source: row.source,
      read: row.read,
    };
  });
  const next = findings.find((finding) => !finding.stands)?.id ?? null;
  return { findings, open: findings.length > 0 && next === null, next };
}

/** An override of "not known" does not cover what later turns out not to be met. */
const covers = (override: Override, answer: 'not-met' | 'not-known'): boolean =>
  override.covers === 'not-met' || answer === 'not-known';

function absoluteBy(
  row: RequirementRow,
  policy: 'absolute' | 'manager' | undefined,
  byLaw: AbsoluteBy | undefined,
): AbsoluteBy | null {
  if (row.absolute === 'always') return 'program';
  if (byLaw !== undefined) return byLaw;
  const wanted = policy ?? (row.absolute === 'shop' ? 'absolute' : 'manager');
  return wanted === 'absolute' ? 'shop' : null;
}

type AnsweredOnce = Answered & { readonly absolute?: AbsoluteBy };

function answersOf(input: ReleaseInput): Readonly<Record<RequirementId, AnsweredOnce>> {
  const { statements } = input;
  const law: LawInput = { ...input.law, said: statements as LawInput['said'] };
  const home = homeRequirements(input.home);
  return {
    ...home,
    guard: orSeen(home.guard, statements.guard),
    'two-hides': orSeen(home['two-hides'], statements['two-hides']),
    lock: orSeen(home.lock, statements.lock),
    thermometer: orSeen(home.thermometer, statements.thermometer),
    ...animalRequirements({
      ...input.animal,
      law: law.law,
      places: placesOf(law),
      treatmentSaid: statements.treatment ?? null,
    }),
    ...(lawRequirements(law) satisfies Record<LawRequirementId, AnsweredOnce>),
    cautions: said(statements.cautions, 'cautions'),
    household: household(input),
    vet: said(statements.vet, 'vet'),
    information: said(statements.information, 'information'),
  };
}

/** Somebody saw the real thing: that goes before the drawing, for better and for worse. */
function orSeen(drawn: Answered, seen: Statement | undefined): Answered {
  if (seen === undefined || seen.answer === 'open') return drawn;
  return {
    answer: seen.answer === 'yes' ? 'met' : 'not-met',
    reasons: [{ key: seen.answer === 'yes' ? 'seen.yes' : 'seen.no', blanks: { text: seen.text } }, ...drawn.reasons],
    evidence: { at: 'statement', on: seen.at, by: seen.by },
  };
}

function said(statement: Statement | undefined, id: 'cautions' | 'household' | 'vet' | 'information'): Answered {
  if (statement === undefined || statement.answer === 'open')
    return {
      answer: 'not-known',
      reasons: [{ key: `${id}.open` }],
      evidence: { at: 'statement', on: null, by: null },
    };
  const key = statement.answer === 'yes' ? 'met' : 'not-met';
  return {
    answer: key,
    reasons: [{ key: `${id}.${key}`, blanks: { text: statement.text } }],
    evidence: { at: 'statement', on: statement.at, by: statement.by },
  };
}

function household({ householdExplained, statements, home }: ReleaseInput): Answered {
  const spoken = said(statements.household, 'household');
  if (spoken.answer !== 'not-known' || !householdExplained) return spoken;
  return {
    answer: 'met',
    reasons: [{ key: 'household.enquiry' }],
    evidence: { at: 'enquiry', on: home.enquiry.on, by: home.enquiry.by },
  };
}
