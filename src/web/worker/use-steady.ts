// The steady answer for the enclosure as it is now; the last one stays on the sheet until the next is there.
import { useEffect, useLayoutEffect, useState } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { useShopValues } from '../state/shop-values.ts';
import type { Conditions } from './protocol.ts';
import { type SteadyOutcome, steadyClient } from './steady-client.ts';

/** Name of the user-timing measure from a change to the redrawn sheet. */
export const redrawMeasure = 'steady-redraw';

export function useSteady(enclosure: Enclosure | null, conditions: Conditions | null): SteadyOutcome | null {
  const own = useShopValues();
  const [outcome, setOutcome] = useState<SteadyOutcome | null>(null);
  useEffect(() => {
    if (enclosure && conditions && own) steadyClient().ask(enclosure, conditions, own.values, setOutcome);
  }, [enclosure, conditions, own]);
  useLayoutEffect(() => {
    if (!outcome) return;
    const frame = requestAnimationFrame(() => {
      performance.measure(redrawMeasure, { start: outcome.askedMs, end: performance.now() });
    });
    return () => cancelAnimationFrame(frame);
  }, [outcome]);
  return outcome;
}
