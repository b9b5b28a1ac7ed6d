// Rows of the smaller tables of data/: substrates, prey, cautions and the catalogue of faults.
import type { Fact } from './fact.ts';
import type { Sourced } from './need.ts';

/** One row of data/substrates.json; its id is also a material id. */
export interface SubstrateFacts {
  readonly id: string;
  readonly name: string;
  /** How well it holds moisture: dry, medium or moist. */
  readonly moisture: Fact;
  readonly burrowing: Fact;
  readonly cautions: Fact;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** One row of data/prey.json. */
export interface Prey {
  readonly id: string;
  readonly name: string;
  readonly animal: string;
  readonly massG: Fact;
  readonly note?: string;
}

/** Who decides where this program may not. */
export type Decider = 'electrician' | 'fire service' | 'doctor' | 'vet' | 'council' | 'police' | 'maker';

/** One row of data/cautions.json. */
export interface Caution extends Sourced {
  readonly id: string;
  readonly topic: string;
  readonly say: string;
  readonly decides: Decider;
  /** Where in the work it is shown. */
  readonly shownAt: readonly string[];
  /** ISO date of the last look at the source. */
  readonly dateChecked: string;
}

/** One row of data/faults.json. */
export interface FaultCase extends Sourced {
  readonly id: string;
  readonly group: 'heat' | 'moisture' | 'measurement' | 'people';
  readonly title: string;
  readonly say: string;
  /** rehearsed: run on the plan; log: seen in readings; ask: asked or inspected. */
  readonly shownBy: readonly ('rehearsed' | 'log' | 'ask')[];
  /** What the rehearsal changes; absent when it cannot be simulated. */
  readonly rehearsal?: string;
  /** What readings look like under this fault. */
  readonly sign: string;
  readonly likelihood: 'rare' | 'now-and-then' | 'common';
  readonly harm: 'comfort' | 'illness' | 'death' | 'fire';
  readonly guard: string;
}
