// While somebody answers the questions, the workers that will look for kits are loaded and get ready, so that the first
// search is not the slow one. Not before the page has been quiet for a while, and not where the browser asks to save.
import { useEffect } from 'react';
import { leaveSearchWorkers, readySearchWorkers } from '../choose/choose-workers.ts';
import { saves } from '../choose/saves.ts';

/** The sheet has been open for this long [ms]: nobody is through with eight questions by then (our choice). */
const openMs = 4000;

export function useReadySearch(): void {
  useEffect(() => {
    if (saves()) return;
    let idle = 0;
    const timer = setTimeout(() => {
      if (!('requestIdleCallback' in window)) return readySearchWorkers();
      idle = window.requestIdleCallback(() => readySearchWorkers());
    }, openMs);
    return () => {
      clearTimeout(timer);
      if (idle) window.cancelIdleCallback(idle);
      leaveSearchWorkers();
    };
  }, []);
}
