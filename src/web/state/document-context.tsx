// Hands every component the document, or only the part of it that it shows, and the one way to change it.
// Leaves out saving to the server (state/use-saving.ts).
import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { Answers } from './document.ts';
import { createDocumentStore, type DocumentActions, type DocumentState, type DocumentStore } from './document-store.ts';
import { loadDraft, storeDraft } from './draft-storage.ts';
import { keptSteps, lineFrom, storeSteps } from './step-storage.ts';

const Context = createContext<DocumentStore | null>(null);

/** Changes rest this long before the device keeps them [ms] (our choice); leaving the page keeps them at once. */
const keepAfterMs = 150;
/** Its steps are many times longer and wait until nothing was done for so long [ms] (our choice). */
const keepStepsAfterMs = 1000;

export function DocumentProvider({ children }: { readonly children: ReactNode }) {
  const [store] = useState(() => createDocumentStore(lineFrom(keptSteps(), loadDraft())));
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let stepsTimer: ReturnType<typeof setTimeout> | undefined;
    let kept = true;
    const keep = () => storeDraft({ document: store.state().document, savedAs: store.state().savedAs });
    const keepSteps = () => {
      kept = true;
      storeSteps(store.steps());
    };
    const leave = store.subscribe(() => {
      kept = false;
      clearTimeout(timer);
      clearTimeout(stepsTimer);
      timer = setTimeout(keep, keepAfterMs);
      stepsTimer = setTimeout(keepSteps, keepStepsAfterMs);
    });
    const keepAll = () => {
      keep();
      if (!kept) keepSteps();
    };
    window.addEventListener('pagehide', keepAll);
    return () => {
      clearTimeout(timer);
      clearTimeout(stepsTimer);
      leave();
      window.removeEventListener('pagehide', keepAll);
    };
  }, [store]);
  return <Context.Provider value={store}>{children}</Context.Provider>;
}

export function useDocumentStore(): DocumentStore {
  const store = useContext(Context);
  if (!store) throw new Error('useDocument outside DocumentProvider');
  return store;
}

export const useDocumentActions = (): DocumentActions => useDocumentStore().actions;

/** One part of how the document stands; the component is drawn anew only when that part is another.
 *  @param select  gives the same value (===) for the same state */
export function useDocumentPart<T>(select: (state: DocumentState) => T): T {
  const { subscribe, state } = useDocumentStore();
  return useSyncExternalStore(subscribe, () => select(state()));
}

export function useAnswer<K extends keyof Answers>(key: K): Answers[K] {
  return useDocumentPart(({ document }) => document.answers[key]);
}

/** All of it; the component is drawn anew at every change. */
export function useDocument(): DocumentState & DocumentActions {
  const { subscribe, state, actions } = useDocumentStore();
  return { ...useSyncExternalStore(subscribe, state), ...actions };
}
