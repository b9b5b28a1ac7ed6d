// What one enquiry is while it is being written: the answers given so far and the enclosure they start from.
// Leaves out the household's health: that caution is shown, never stored.
import { usualHomeStandardId } from '../../husbandry/usual-standard.ts';
import type { Enclosure, LifeStage, RoomDay } from '../../physics/enclosure.ts';

export const documentFormat = 'warmstead-enquiry';
export const documentVersion = 1;

export type Sun = 'none' | 'some' | 'hours';

export interface Answers {
  readonly label: string;
  readonly speciesId: string | null;
  readonly stage: LifeStage | null;
  readonly totalLengthM: number | null;
  readonly massG: number | null;
  readonly winterLowC: number | null;
  readonly winterHighC: number | null;
  readonly summerLowC: number | null;
  readonly summerHighC: number | null;
  /** Of the room in winter, and in summer too unless that is known apart [%]. */
  readonly rhPct: number | null;
  readonly summerRhPct: number | null;
  /** False when nobody has measured it and the usual value stands in. */
  readonly rhMeasured: boolean;
  readonly sun: Sun | null;
  readonly startFrom: string | null;
  readonly cautionsExplained: boolean;
  /** The space standard the home is to meet, a key of data/standards.json; null until one is chosen. */
  readonly standardId: string | null;
  /** True once a person chose it; until then the shop's own standard goes before the usual one. */
  readonly standardChosen?: boolean;
}

export interface PlanDocument {
  readonly format: typeof documentFormat;
  readonly version: typeof documentVersion;
  readonly answers: Answers;
  /** The box and its kit; its room and animal are replaced by the answers. Null until one is chosen. */
  readonly enclosure: Enclosure | null;
}

export const emptyDocument: PlanDocument = {
  format: documentFormat,
  version: documentVersion,
  answers: {
    label: '',
    speciesId: null,
    stage: null,
    totalLengthM: null,
    massG: null,
    winterLowC: null,
    winterHighC: null,
    summerLowC: null,
    summerHighC: null,
    rhPct: null,
    summerRhPct: null,
    rhMeasured: true,
    sun: null,
    startFrom: null,
    cautionsExplained: false,
    standardId: usualHomeStandardId,
  },
  enclosure: null,
};

/** Peak sun on the outside of the front and its hours [W/m2, h]; our choice, said so beside the question. */
export const sunDays: Readonly<Record<Sun, { sunPeakWPerM2: number; sunFromH?: number; sunToH?: number }>> = {
  none: { sunPeakWPerM2: 0 },
  some: { sunPeakWPerM2: 150, sunFromH: 9, sunToH: 12 },
  hours: { sunPeakWPerM2: 400, sunFromH: 10, sunToH: 17 },
};

/** Humidity of a heated room that nobody has measured [%]; our choice, said so beside the question. */
export const usualRhPct = 45;

export type QuestionId = 'animal' | 'size' | 'household' | 'winter' | 'summer' | 'humidity' | 'sun' | 'box';
export const questionIds: readonly QuestionId[] = [
  'animal',
  'size',
  'household',
  'winter',
  'summer',
  'humidity',
  'sun',
  'box',
];

/** True when the question has all that the plan needs. */
export function isAnswered(id: QuestionId, { answers, enclosure }: PlanDocument): boolean {
  switch (id) {
    case 'animal':
      return answers.speciesId !== null && answers.stage !== null;
    case 'size':
      return answers.totalLengthM !== null;
    case 'household':
      return answers.cautionsExplained;
    case 'winter':
      return spanInOrder(answers.winterLowC, answers.winterHighC);
    case 'summer':
      return spanInOrder(answers.summerLowC, answers.summerHighC);
    case 'humidity':
      return answers.rhPct !== null;
    case 'sun':
      return answers.sun !== null;
    case 'box':
      return enclosure !== null;
  }
}

export function spanInOrder(low: number | null, high: number | null): boolean {
  return low !== null && high !== null && low <= high;
}

export function firstOpenQuestion(document: PlanDocument): QuestionId | null {
  return questionIds.find((id) => !isAnswered(id, document)) ?? null;
}

/** The full enclosure file: kit from the start, room and animal from the answers; null while something is open. */
export function composedEnclosure({ answers, enclosure }: PlanDocument): Enclosure | null {
  const { winterLowC, winterHighC, summerLowC, summerHighC, rhPct, sun, speciesId, stage, totalLengthM } = answers;
  if (!enclosure || speciesId === null || stage === null || totalLengthM === null) return null;
  if (winterLowC === null || winterHighC === null || summerLowC === null || summerHighC === null) return null;
  if (rhPct === null || sun === null || winterLowC > winterHighC || summerLowC > summerHighC) return null;
  const roomDay = (lowC: number, highC: number, dayRhPct: number): RoomDay => ({
    lowC,
    highC,
    rhPct: dayRhPct,
    ...sunDays[sun],
  });
  return {
    ...enclosure,
    room: {
      winter: roomDay(winterLowC, winterHighC, rhPct),
      summer: roomDay(summerLowC, summerHighC, answers.summerRhPct ?? rhPct),
    },
    animal: { speciesId, stage, totalLengthM, massG: answers.massG },
  };
}
