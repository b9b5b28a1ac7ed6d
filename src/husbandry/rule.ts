// What every rule of the enclosure is handed and gives back, and the animal it judges for.
// Leaves out: temperatures and humidity over the day, which the planning room judges by simulation.
import type { Enclosure, LifeStage } from '../physics/enclosure.ts';
import { english, isSaying, type Sayable, type Told, told } from './coded.ts';
import type { Facts, Species } from './fact.ts';
import type { NeedVerdict, ReadMark } from './need.ts';
import type { OwnMark } from './shop-value.ts';
import { rangeOf } from './species-facts.ts';
import type { Standard } from './standard.ts';

/** A rule looks at the enclosure as drawn; standard null = none chosen. */
export type Rule = (
  enclosure: Enclosure,
  species: Species,
  standard: Standard | null,
  facts: Facts,
) => readonly NeedVerdict[];

/** Whose number it is that decides. */
export interface Basis {
  readonly source: string;
  readonly read: ReadMark;
  readonly own?: OwnMark;
}
export const commonPractice: Basis = { source: 'COMMON', read: 'memory' };
export const ourChoice: Basis = { source: 'OUR-CHOICE', read: 'memory' };
export const basisOf = (x: Basis): Basis => ({ source: x.source, read: x.read, ...(x.own ? { own: x.own } : {}) });
/** A rule of the trade that turns on a fact which the shop may have overruled. */
export const practiceWith = (fact: Pick<Basis, 'own'> | undefined): Basis =>
  fact?.own ? { ...commonPractice, own: fact.own } : commonPractice;

export interface JudgedAnimal {
  readonly stage: LifeStage;
  readonly totalLengthM: number;
  readonly massG: number | null;
  /** True when the file names no animal of this species, so that its usual adult is judged. */
  readonly assumed: boolean;
}

/** The animal of the file, or the longest usual adult of the species. Null when neither is known. */
export function animalOf(enclosure: Enclosure, species: Species): JudgedAnimal | null {
  const { animal } = enclosure;
  if (animal && animal.speciesId === species.id) {
    const { stage, totalLengthM, massG } = animal;
    return { stage, totalLengthM, massG, assumed: false };
  }
  const adult = rangeOf(species, 'adult', 'totalLengthCm');
  return adult ? { stage: 'adult', totalLengthM: adult.high / 100, massG: null, assumed: true } : null;
}

export type End = 'left' | 'right';

/** The end of the strongest heater, as the simulation takes it; null without a heater. */
export function warmEndOf(enclosure: Enclosure): End | null {
  const strongest = enclosure.heaters.reduce<Enclosure['heaters'][number] | null>(
    (a, b) => (a && a.powerW >= b.powerW ? a : b),
    null,
  );
  if (!strongest) return null;
  return strongest.xM <= enclosure.box.lengthM / 2 ? 'left' : 'right';
}

/** Which end a place lies at. */
export const endAt = (enclosure: Enclosure, xM: number): End => (xM <= enclosure.box.lengthM / 2 ? 'left' : 'right');

type Texts = 'wanted' | 'found' | 'reasons' | 'fixes' | 'settledBy' | 'told' | 'source' | 'read' | 'own';

/** A verdict in the making: its texts may carry their codes. */
export interface Part extends Omit<NeedVerdict, Texts> {
  readonly wanted: Sayable;
  readonly found: Sayable;
  readonly reasons: readonly Sayable[];
  readonly fixes?: readonly Sayable[];
  readonly settledBy?: Sayable;
}

const toldOr = (x: Sayable | undefined): Told | null => (isSaying(x) ? told(x) : null);

/** Puts a verdict together; fixes are dropped when the need holds. */
export function need(part: Part, basis: Basis): NeedVerdict {
  const { wanted, found, reasons, fixes: asked = [], settledBy, ...rest } = part;
  const fixes = part.verdict === 'holds' ? [] : asked;
  return {
    ...rest,
    wanted: english(wanted),
    found: english(found),
    reasons: reasons.map(english),
    fixes: fixes.map(english),
    ...(settledBy === undefined ? {} : { settledBy: english(settledBy) }),
    told: {
      wanted: toldOr(wanted),
      found: toldOr(found),
      reasons: reasons.map(toldOr),
      fixes: fixes.map(toldOr),
      settledBy: toldOr(settledBy),
    },
    ...basisOf(basis),
  };
}
