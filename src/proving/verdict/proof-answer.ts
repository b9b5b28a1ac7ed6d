// What a proof answers: proven, not proven or failed, with the exact reason, the next thing to do, and all it rests on.

import type { Spread } from '../../shared/interval.ts';
import type { ProvenDial } from '../calibration/dial.ts';
import type { InsidePlace } from '../calibration/forecast.ts';
import type { Learned } from '../calibration/learned.ts';
import type { MomentId } from '../calibration/moments.ts';
import type { NextReading } from '../calibration/next-reading.ts';
import type { Diagnosis } from '../diagnosis/cause.ts';
import type { Coverage } from './coverage.ts';
import type { ForecastNeed } from './forecast-needs.ts';
import type { Ground, How } from './ground.ts';
import type { ReadNeed } from './read-needs.ts';
import type { RoomRead } from './room-read.ts';
import type { ProofRule, RuleSetting } from './rule.ts';

export type ProofVerdict = 'proven' | 'not-proven' | 'failed';

export type ActionId =
  | 'answer-question'
  | 'mend-fault'
  | 'keep-reading'
  | 'read-closer'
  | 'fill-gap'
  | 'read-place'
  | 'check-instrument'
  | 'turn-dial'
  | 'stronger-heater'
  | 'cooler-place'
  | 'read-more'
  | 'release';

/** The next thing to do, with the figures behind its words. */
export interface NextAction {
  readonly id: ActionId;
  readonly say: string;
  /** The same without a language; answers kept before there was one have none. */
  readonly how?: How;
}

export interface MomentSummary {
  readonly id: MomentId;
  readonly roomC: number;
  readonly spreadC: Readonly<Partial<Record<InsidePlace, Spread>>>;
  readonly coolRhPct: Spread;
  readonly powerW: Spread;
  readonly flatOutShare: number;
}

export interface ProofAnswer {
  readonly verdict: ProofVerdict;
  /** The deciding reason in one sentence. */
  readonly reason: string;
  /** Every other reason. */
  readonly reasons: readonly string[];
  /** What reason and reasons are about, without a language; answers kept before there were any have none. */
  readonly ground?: Ground;
  readonly grounds?: readonly Ground[];
  readonly next: NextAction;
  readonly coverage: Coverage;
  readonly needs: readonly ReadNeed[];
  readonly forecastNeeds: readonly ForecastNeed[];
  readonly moments: readonly MomentSummary[];
  readonly learned: readonly Learned[];
  readonly dial: ProvenDial | null;
  readonly nextReadings: readonly NextReading[];
  readonly diagnosis: Diagnosis;
  readonly rule: ProofRule;
  readonly ruleBasis: string;
  /** Parts of the rule that the shop set, with who, when and why; answers kept before there were any have none. */
  readonly ruleSettings?: readonly RuleSetting[];
  /** Whether the room was read; assumed rooms make forecasts wide. */
  readonly roomFrom: 'read' | 'assumed' | 'none';
  /** Lowest and highest temperature of the room while the home was read [degC]; null when the room was not read.
   *  Answers kept before it was worked out have none: not known. */
  readonly roomReadC?: RoomRead | null;
  readonly lagH: number;
  readonly seed: number;
}
