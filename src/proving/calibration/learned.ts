// What could the readings say about the box, and what could they not? For each uncertain quantity: how much narrower the
// belief has become. Leaves out advice (next-reading.ts).
import type { ParameterName } from '../../physics/parameters.ts';
import { priorValueAt } from '../../physics/priors.ts';
import type { Fit } from './fit.ts';

export type LearnedMark = 'settled' | 'partly' | 'open';

export interface Learned {
  readonly name: ParameterName;
  readonly mark: LearnedMark;
  /** Width of the belief now over its width before, 0..1. */
  readonly widthLeftFrac: number;
  /** Middle and ends of the 90 % belief now, in the quantity's own unit. */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly priorLow: number;
  readonly priorHigh: number;
}

/** Halved counts as settled, hardly narrower as open; our choice. */
const bounds = { settled: 0.5, open: 0.85 } as const;

/** One row for each unknown of the fit, what was learned most first. */
export function learnedFrom(fit: Fit): Learned[] {
  const { priors, names } = fit.input.plan.unknowns;
  return names
    .map((name, i): Learned => {
      const prior = priors.find((p) => p.name === name)!;
      const at = (k: number) => priorValueAt(prior, fit.state[i]! + k * 1.645 * fit.sd[i]!);
      const widthLeftFrac = Math.min(1, fit.sd[i]!);
      const mark = widthLeftFrac <= bounds.settled ? 'settled' : widthLeftFrac < bounds.open ? 'partly' : 'open';
      return {
        name,
        mark,
        widthLeftFrac,
        low: at(-1),
        median: at(0),
        high: at(1),
        priorLow: prior.low,
        priorHigh: prior.high,
      };
    })
    .sort((a, b) => a.widthLeftFrac - b.widthLeftFrac);
}
