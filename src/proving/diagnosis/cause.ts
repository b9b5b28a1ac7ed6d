// The mistakes that readings can show, and what a diagnosis of them looks like.
import type { Told } from '../../husbandry/coded.ts';
import type { LogPlace } from '../reading-log.ts';

export const causes = [
  'no-thermostat',
  'stuck-on',
  'stuck-off',
  'probe-cool-end',
  'probe-fallen',
  'dial-set-to-basking',
  'deep-substrate',
  'sun-on-glass',
  'timer-shifted',
  'wet-sensor',
] as const;
export type Cause = (typeof causes)[number];

/** A stretch of a curve that shows it. */
export interface Evidence {
  readonly channelId: string;
  readonly place: LogPlace | null;
  readonly fromS: number;
  readonly toS: number;
  /** What is seen there. */
  readonly say: string;
  /** The same without a language; absent in a proof kept from before. */
  readonly told?: Told;
}

export interface Suspect {
  readonly cause: Cause;
  /** Natural logarithm of how much better it explains the readings than a healthy home does. */
  readonly weight: number;
  readonly evidence: readonly Evidence[];
}

export interface Diagnosis {
  /** Most likely first; empty when a healthy home explains the readings. */
  readonly suspects: readonly Suspect[];
  readonly healthy: boolean;
}

/** A cause is named when it explains the readings this much better than a healthy home [natural log]; our choice, set on
 *  practice logs so that few healthy homes are suspected. */
export const namedFrom = 2;
