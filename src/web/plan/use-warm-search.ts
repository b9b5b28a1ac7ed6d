// While somebody reads the plan, the search for kits takes a first look at the same home, so that it answers at once when asked.
// Not while the plan itself is being worked out, and not where the browser asks to save.
import { useEffect } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { usualTariff, usualYears } from '../../planning/search/search-input.ts';
import { leaveSearchWorkers, warmSearchWorkers } from '../choose/choose-workers.ts';
import { saves } from '../choose/saves.ts';

/** The plan has stood still for this long [ms] (our choice). */
const stillMs = 1500;

/** @param enclosure of a plan that has settled, else null */
export function useWarmSearch(enclosure: Enclosure | null, standardId: string | undefined): void {
  useEffect(() => {
    if (!enclosure || saves()) return;
    const costs = { tariffPerKWh: usualTariff.perKWh, years: usualYears, drawnIsOwned: false };
    const timer = setTimeout(
      () => warmSearchWorkers({ enclosure, standardId, shopValues: [], shelf: null, ownedIds: [], ...costs }),
      stillMs,
    );
    return () => {
      clearTimeout(timer);
      leaveSearchWorkers();
    };
  }, [enclosure, standardId]);
}
