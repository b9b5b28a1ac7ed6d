// What a reason and an advice are about, as ids and figures: from them a screen makes its own sentence in its own
// language. The English sentence stands beside it (words.ts, decide.ts). Leaves out words.
import type { Cause } from '../diagnosis/cause.ts';
import type { LogQuestion } from '../files/understood.ts';
import type { LogPlace } from '../reading-log.ts';
import type { ForecastNeed } from './forecast-needs.ts';
import type { ReadNeed } from './read-needs.ts';

/** Why: the need, forecast or suspect is found by its id in the answer. */
export type Ground =
  | { readonly about: 'proven' }
  | { readonly about: 'interval' }
  | { readonly about: 'nights' }
  | { readonly about: 'need'; readonly id: ReadNeed['id'] }
  | { readonly about: 'forecast'; readonly id: ForecastNeed['id'] }
  | { readonly about: 'cause'; readonly cause: Cause }
  | { readonly about: 'question'; readonly id: LogQuestion['id'] }
  | { readonly about: 'hole'; readonly hours: number };

/** How the next action is done. lessPct: doubt that goes away [%]. */
export type How =
  | {
      readonly by:
        | 'night-set-point'
        | 'moisture'
        | 'vents-at-cool-end'
        | 'cover-vents'
        | 'no-dial'
        | 'dial'
        | 'dial-too-weak'
        | 'cooler-room'
        | 'flat-out'
        | 'raise-night'
        | 'step'
        | 'without-hole'
        | 'nights'
        | 'ready';
    }
  | { readonly by: 'look'; readonly cause: Cause }
  | { readonly by: 'question'; readonly id: LogQuestion['id'] }
  | { readonly by: 'sensor'; readonly need: ReadNeed['id'] }
  | { readonly by: 'ice' | 'salt'; readonly place: LogPlace }
  | { readonly by: 'ice-less' | 'read-less'; readonly place: LogPlace; readonly lessPct: number }
  | { readonly by: 'plug-less'; readonly lessPct: number };
