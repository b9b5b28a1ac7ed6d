// The climate an animal of one species and life stage needs, as the planning room compares it with a simulation.
import type { Sourced } from './need.ts';
import type { OwnMark } from './shop-value.ts';

/** A sourced low..high; both present. */
export type SourcedRange = Sourced & { readonly low: number; readonly high: number };

export interface ClimateNeeds {
  readonly speciesId: string;
  readonly stage: 'hatchling' | 'young' | 'adult';
  readonly baskingSurfaceC: SourcedRange;
  readonly warmAirC: SourcedRange;
  readonly coolAirC: SourcedRange;
  readonly nightMinC: SourcedRange;
  readonly rhPct: SourcedRange;
  /** No surface within reach above this: target, alarm and hard cut-out [°C]. */
  readonly reachableMaxC: {
    readonly target: number;
    readonly alarm: number;
    readonly cutOut: number;
    readonly source: string;
    readonly own?: OwnMark;
  };
  /** Whether the species climbs, so that a perch counts. */
  readonly climbs: boolean;
}
