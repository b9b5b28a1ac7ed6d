// Hands every component the document, the one way to change it, and undo.
// Leaves out saving to the server (state/use-saving.ts).
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { type Answers, composedEnclosure, emptyDocument, type PlanDocument } from './document.ts';
import { loadDraft, type SavedAs, storeDraft } from './draft-storage.ts';
import { changed, historyOf, redone, rested, undone } from './history.ts';

export type Change = (next: (document: PlanDocument) => PlanDocument, gesture?: string) => void;

interface DocumentContext {
  readonly document: PlanDocument;
  /** The enclosure with room and animal filled in; null while a question is open. */
  readonly enclosure: Enclosure | null;
  readonly savedAs: SavedAs | null;
  readonly setSavedAs: (saved: SavedAs | null) => void;
  readonly change: Change;
  readonly answer: (part: Partial<Answers>, gesture?: string) => void;
  readonly changeEnclosure: (next: (enclosure: Enclosure) => Enclosure, gesture?: string) => void;
  readonly undo: (() => void) | null;
  readonly redo: (() => void) | null;
  /** Another document altogether: a fresh one, or one opened from the server. */
  readonly open: (document: PlanDocument, savedAs: SavedAs | null) => void;
  readonly startAfresh: () => void;
}

const Context = createContext<DocumentContext | null>(null);

/** A gesture ends when nothing has moved for this long [ms] (our choice). */
const restMs = 700;

export function DocumentProvider({ children }: { readonly children: ReactNode }) {
  const [first] = useState(loadDraft);
  const [history, setHistory] = useState(first.history);
  const [savedAs, setSavedAs] = useState(first.savedAs);
  const restTimer = useRef<ReturnType<typeof setTimeout>>(undefined);

  const change = useCallback<Change>((next, gesture) => {
    setHistory((now) => changed(now, next(now.present), gesture ?? null));
    clearTimeout(restTimer.current);
    restTimer.current = setTimeout(() => setHistory(rested), restMs);
  }, []);

  const { present, past, future } = history;
  useEffect(() => {
    const timer = setTimeout(() => storeDraft({ document: present, savedAs }), 150);
    const now = () => storeDraft({ document: present, savedAs });
    window.addEventListener('pagehide', now);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('pagehide', now);
    };
  }, [present, savedAs]);

  const enclosure = useMemo(() => composedEnclosure(present), [present]);
  const canUndo = past.length > 0;
  const canRedo = future.length > 0;
  const value = useMemo<DocumentContext>(
    () => ({
      document: present,
      enclosure,
      savedAs,
      setSavedAs,
      change,
      answer: (part, gesture) =>
        change((document) => ({ ...document, answers: { ...document.answers, ...part } }), gesture),
      changeEnclosure: (next, gesture) =>
        change(
          (document) => (document.enclosure ? { ...document, enclosure: next(document.enclosure) } : document),
          gesture,
        ),
      undo: canUndo ? () => setHistory(undone) : null,
      redo: canRedo ? () => setHistory(redone) : null,
      open: (document, saved) => {
        setHistory(historyOf(document));
        setSavedAs(saved);
      },
      startAfresh: () => {
        setHistory((now) => changed(now, emptyDocument, null));
        setSavedAs(null);
      },
    }),
    [present, enclosure, savedAs, change, canUndo, canRedo],
  );
  return <Context.Provider value={value}>{children}</Context.Provider>;
}

export function useDocument(): DocumentContext {
  const context = useContext(Context);
  if (!context) throw new Error('useDocument outside DocumentProvider');
  return context;
}
