// What the three kinds of thermostat do with what their probe feels: on/off with a differential, pulse-proportional
// and dimming with a proportional band. Hardware limits: rating is a safety rule (husbandry), not modelled here.
// Pulse is treated by its mean power: a cycle of seconds is far shorter than the box's answer (ripple: check P-154).
import type { Thermostat } from './enclosure.ts';

export interface ControlState {
  /** What the probe reads, lag included [degC]. */
  readonly probeC: number;
  /** on/off: whether it is on; others: last duty. */
  readonly duty: number;
  readonly cutOpen: boolean;
  readonly switches: number;
}

/** Time constant of a thermostat's probe in still air [s]; a metal-can sensor measured 60 s (check P-158). */
export const probeLagS = 60;

/** Thresholds of an on/off thermostat around its set point [degC]. */
export const onBelow = (t: Thermostat, setC: number): number => setC - t.bandK / 2;
export const offAbove = (t: Thermostat, setC: number): number => setC + t.bandK / 2;

/** Duty of a proportional thermostat at a reading: half power at the set point. */
export const proportionalDuty = (t: Thermostat, setC: number, probeC: number): number =>
  Math.max(0, Math.min(1, 0.5 + (setC - probeC) / Math.max(t.bandK, 0.05)));

/** Reading of a probe after dtS with the settled value moving linearly from a to b. First-order lag, exact.
 *  @param lagS time constant [s] */
export function laggedReading(readingC: number, fromC: number, toC: number, dtS: number, lagS: number): number {
  const ratio = dtS / lagS;
  const decay = Math.exp(-ratio);
  const slope = (toC - fromC) / dtS;
  return toC - slope * lagS + (readingC - fromC + slope * lagS) * decay;
}

/** Share of a step at which a straight line crosses a threshold, 0..1; null when it does not. */
export function crossing(fromC: number, toC: number, thresholdC: number, rising: boolean): number | null {
  const crosses = rising ? fromC < thresholdC && toC >= thresholdC : fromC > thresholdC && toC <= thresholdC;
  if (!crosses) return null;
  return toC === fromC ? 0 : (thresholdC - fromC) / (toC - fromC);
}
