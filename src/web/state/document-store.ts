// The one place where the document of this page lies, with its undone and redone steps and the one way to change it.
// Leaves out how it is kept: on the device (document-context.tsx), on the server (use-saving.ts).
import type { Enclosure } from '../../physics/enclosure.ts';
import { type Answers, composedEnclosure, emptyDocument, type PlanDocument } from './document.ts';
import type { SavedAs } from './draft-storage.ts';
import { changed, type History, historyOf, redone, rested, undone } from './history.ts';
import { type Line, stepsText } from './step-storage.ts';

export type Change = (next: (document: PlanDocument) => PlanDocument, gesture?: string) => void;

/** What can be done to the document; the same functions for as long as the page stands. */
export interface DocumentActions {
  readonly setSavedAs: (saved: SavedAs | null) => void;
  readonly change: Change;
  readonly answer: (part: Partial<Answers>, gesture?: string) => void;
  readonly changeEnclosure: (next: (enclosure: Enclosure) => Enclosure, gesture?: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Another document altogether: a fresh one, or one opened from the server. */
  readonly open: (document: PlanDocument, savedAs: SavedAs | null) => void;
  readonly startAfresh: () => void;
}

/** How the document stands. */
export interface DocumentState {
  readonly document: PlanDocument;
  /** The enclosure with room and animal filled in; null while a question is open. */
  readonly enclosure: Enclosure | null;
  readonly savedAs: SavedAs | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export interface DocumentStore {
  readonly actions: DocumentActions;
  readonly state: () => DocumentState;
  /** All its steps as a text, for this device to keep. */
  readonly steps: () => string;
  readonly subscribe: (listener: () => void) => () => void;
}

/** Whether there is something that a person would miss. */
export function isStarted({ document }: DocumentState): boolean {
  return document.answers.speciesId !== null || document.enclosure !== null;
}

/** A gesture ends when nothing has moved for this long [ms] (our choice). */
const restMs = 700;

export function createDocumentStore(first: Line): DocumentStore {
  let { history, savedAs } = first;
  let state = stateOf(history, savedAs, null);
  let restTimer: ReturnType<typeof setTimeout> | undefined;
  /** Where documents were kept that a fresh start left behind: taking it back goes on with the same enquiry. */
  const left = new WeakMap<PlanDocument, SavedAs>(first.left);
  const listeners = new Set<() => void>();
  const put = (nextHistory: History<PlanDocument>, nextSavedAs: SavedAs | null): void => {
    if (nextHistory === history && nextSavedAs === savedAs) return;
    history = nextHistory;
    savedAs = nextSavedAs;
    state = stateOf(history, savedAs, state);
    for (const listener of listeners) listener();
  };
  const change: Change = (next, gesture) => {
    put(changed(history, next(history.present), gesture ?? null), savedAs);
    clearTimeout(restTimer);
    // Nobody sees that the hand rests: the state stays the same one.
    restTimer = setTimeout(() => {
      history = rested(history);
    }, restMs);
  };
  return {
    actions: {
      change,
      setSavedAs: (saved) => put(history, saved),
      answer: (part, gesture) =>
        change((document) => ({ ...document, answers: { ...document.answers, ...part } }), gesture),
      changeEnclosure: (next, gesture) =>
        change(
          (document) => (document.enclosure ? { ...document, enclosure: next(document.enclosure) } : document),
          gesture,
        ),
      undo: () => {
        const next = undone(history);
        put(next, left.get(next.present) ?? savedAs);
      },
      redo: () => {
        const next = redone(history);
        // A fresh start done again is kept nowhere yet, or it would lie over the enquiry that was left.
        put(next, next !== history && next.present === emptyDocument ? null : savedAs);
      },
      open: (document, saved) => put(historyOf(document), saved),
      startAfresh: () => {
        if (savedAs !== null) left.set(history.present, savedAs);
        put(changed(history, emptyDocument, null), null);
      },
    },
    state: () => state,
    steps: () => stepsText(history, savedAs, (document) => left.get(document)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function stateOf(history: History<PlanDocument>, savedAs: SavedAs | null, before: DocumentState | null): DocumentState {
  const document = history.present;
  return {
    document,
    enclosure: before?.document === document ? before.enclosure : composedEnclosure(document),
    savedAs,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
  };
}
