// Everything that a pack tells of, besides the computed figures: the animal, its home's proof, what was decided and whose
// values were used. Leaves out where it is kept (gather-pack.ts).
import type { IsoDate } from '../../animal/calendar.ts';
import type { CareFacts } from '../../animal/care-facts.ts';
import type { AnimalEvent } from '../../animal/event.ts';
import type { Fitness } from '../../animal/fitness.ts';
import type { RegisterEntry } from '../../animal/register.ts';
import type { Facts, Species } from '../../husbandry/fact.ts';
import type { Place } from '../../husbandry/law-rule.ts';
import type { LifeStage } from '../../physics/enclosure.ts';
import type { ProofAnswer } from '../../proving/verdict/proof-answer.ts';
import type { ShopValue } from '../shop-values.ts';

export interface PackAnimal {
  /** Number in the register; null for a pack made from a file alone. */
  readonly registerId: string | null;
  readonly species: Species;
  readonly stage: LifeStage | null;
  readonly entry: RegisterEntry;
  readonly events: readonly AnimalEvent[];
  readonly massG: number | null;
  readonly totalLengthCm: number | null;
  readonly movedOn: IsoDate | null;
  readonly fitness: Fitness | null;
}

export interface PackProof {
  readonly on: IsoDate;
  readonly answer: ProofAnswer;
  /** Home and readings are still those it was made of. */
  readonly current: boolean;
}

export interface PackOverride {
  /** What was not met, in the reader's language. */
  readonly what: Readonly<Record<string, string>>;
  readonly why: string;
  readonly by: string;
  readonly on: IsoDate;
}

export interface PackSubject {
  readonly printedOn: IsoDate;
  readonly shopName: string;
  readonly branchName: string;
  /** Place of the desk, and that of the home where it differs. */
  readonly places: readonly Place[];
  readonly southern: boolean;
  readonly animal: PackAnimal;
  readonly proof: PackProof | null;
  readonly state: 'open' | 'released' | 'refused';
  /** When and by whom it was released or refused. */
  readonly ended: { readonly on: IsoDate; readonly by: string } | null;
  readonly overrides: readonly PackOverride[];
  readonly shopValues: readonly ShopValue[];
  readonly vetName: string;
  readonly facts: Facts;
  readonly care: CareFacts;
}
