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

/** Only the hottest surface in reach is judged there. */
export interface JudgedTurn {
  readonly roomC: number;
  readonly places: { readonly 'hottest-reachable': number | null };
}

export interface JudgedMember {
  readonly winterNight: JudgedMoment;
  readonly winterDay: JudgedMoment;
  readonly summerDay: JudgedMoment;
  readonly summerNight: JudgedMoment;
  readonly midDay: JudgedMoment;
  readonly midNight: JudgedMoment;
  /** Where the heater comes off its stop between the cold and the hot; null where it does not. */
  readonly turnDay: JudgedTurn | null;
  readonly turnNight: JudgedTurn | null;
  readonly untrimmedDay: JudgedMoment;
  readonly flatOutBaskingC: number;
  readonly trimmedDialC: number | null;
}
