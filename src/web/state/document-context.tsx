// Hands every component the document, or only the part of it that it shows, and the one way to change it.
// Leaves out saving to the server (state/use-saving.ts).
import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import type { Answers } from './document.ts';
import { createDocumentStore, type DocumentActions, type DocumentState, type DocumentStore } from './document-store.ts';
import { loadDraft, storeDraft } from './draft-storage.ts';

const Context = createContext<DocumentStore | null>(null);

/** Changes rest this long before the device keeps them [ms] (our choice); leaving the page keeps them at once. */
const keepAfterMs = 150;

export function DocumentProvider({ children }: { readonly children: ReactNode }) {
  const [store] = useState(() => createDocumentStore(loadDraft()));
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const keep = () => storeDraft({ document: store.state().document, savedAs: store.state().savedAs });
    const leave = store.subscribe(() => {
      clearTimeout(timer);
      timer = setTimeout(keep, keepAfterMs);
    });
    window.addEventListener('pagehide', keep);
    return () => {
      clearTimeout(timer);
      leave();
      window.removeEventListener('pagehide', keep);
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
