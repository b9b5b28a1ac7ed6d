// Once every question is answered, the workers that will look for kits are loaded and get ready, so that the first search is not the
// slow one. Not while questions are being answered, which loading them would hold up by some tens of milliseconds on a
// slow tablet, not before the page has been quiet for a while, and not where the browser asks to save.
import { useEffect } from 'react';
import { leaveSearchWorkers, readySearchWorkers } from '../choose/choose-workers.ts';
import { saves } from '../choose/saves.ts';

/** Everything has been answered for this long [ms] (our choice). */
const answeredMs = 4000;

export function useReadySearch(answered: boolean): void {
  useEffect(() => {
    if (!answered || saves()) return;
    let idle = 0;
    const timer = setTimeout(() => {
      if (!('requestIdleCallback' in window)) return readySearchWorkers();
      idle = window.requestIdleCallback(() => readySearchWorkers());
    }, answeredMs);
    return () => {
      clearTimeout(timer);
      if (idle) window.cancelIdleCallback(idle);
      leaveSearchWorkers();
    };
  }, [answered]);
}
