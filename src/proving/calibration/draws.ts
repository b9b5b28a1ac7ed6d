// Possible boxes that agree with the readings: draws from what is believed after a fit, the same for the same seed.
import { normalQuantile } from '../../physics/priors.ts';
import { seededUniform } from '../../shared/seeded.ts';
import { type LogPlace, logPlaces, type Quantity } from '../reading-log.ts';
import { type Fit, misfitKey, periodKey } from './fit.ts';
import { misfitSd, reachSdPerK } from './misfit.ts';
import { backSolve } from './positive-matrix.ts';

export interface Draw {
  /** Scores of the unknowns. */
  readonly scores: Float64Array;
  /** True value of a place from the simulator's value, without any instrument [degC, %RH or W].
   *  @param awayK how far the room lies outside the rooms that were read [K] */
  readonly truth: (
    quantity: Quantity,
    place: LogPlace,
    isDay: boolean,
    modelled: number,
    roomC: number,
    awayK: number,
  ) => number;
}

/** Draw from the posterior. The first is its middle. @param draws 1..1024 */
export function drawBoxes(fit: Fit, draws: number, seed: number): Draw[] {
  const uniform = seededUniform(seed);
  const normal = () => normalQuantile(uniform());
  const n = fit.layout.size;
  return Array.from({ length: draws }, (_, d) => {
    const unit = Float64Array.from({ length: n }, () => (d === 0 ? 0 : normal()));
    const move = backSolve(fit.factor, n, unit);
    const state = fit.state.map((v, i) => v + move[i]!);
    // misfits of places that nobody read, and of rooms that nobody read
    const unread = new Map<string, number>();
    for (const quantity of ['tempC', 'rhPct', 'powerW'] as const)
      for (const place of logPlaces)
        for (const key of [
          misfitKey({ quantity, place }),
          periodKey({ quantity, place, isDay: true }),
          periodKey({ quantity, place, isDay: false }),
          `${misfitKey({ quantity, place })} reach`,
        ])
          unread.set(key, d === 0 ? 0 : normal());
    const scoreOf = (key: string): number => {
      const i = fit.layout.keys.indexOf(key);
      return i >= 0 ? state[fit.layout.misfits + i]! : unread.get(key)!;
    };
    return {
      scores: state.slice(0, fit.layout.scores),
      truth: (quantity, place, isDay, modelled, roomC, awayK) => {
        const sd = misfitSd(quantity, place, quantity === 'tempC' ? modelled - roomC : modelled);
        const reach =
          quantity === 'tempC' ? awayK * reachSdPerK * unread.get(`${misfitKey({ quantity, place })} reach`)! : 0;
        return (
          modelled +
          sd.place * scoreOf(misfitKey({ quantity, place })) +
          sd.period * scoreOf(periodKey({ quantity, place, isDay })) +
          reach
        );
      },
    };
  });
}
