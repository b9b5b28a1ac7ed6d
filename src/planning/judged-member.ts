// What of one version of a box the verdicts on climate look at. A solved member (member.ts) has all of it; so has a kit
// read off its lines (search/judge-kit.ts), so that both are judged by the same words.
import type { PlaceId } from '../physics/answer.ts';

export interface JudgedMoment {
  readonly places: Readonly<Record<PlaceId, number | null>>;
  readonly dutyFrac: number;
  readonly coolRhPct: number;
  readonly glassDewMarginK: number;
  readonly evaporationGPerH: number;
}

export interface JudgedMember {
  readonly winterNight: JudgedMoment;
  readonly winterDay: JudgedMoment;
  readonly summerDay: JudgedMoment;
  readonly midDay: JudgedMoment;
  readonly midNight: JudgedMoment;
  readonly untrimmedDay: JudgedMoment;
  readonly flatOutBaskingC: number;
  readonly trimmedDialC: number | null;
}
