// Undo and redo: a line of past documents, the present one and those undone.
// Changes with the same mark within one gesture are one step. Leaves out what the document holds.

export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** The gesture that made the present; a further change of the same gesture replaces it. */
  readonly gesture: string | null;
}

/** Steps kept; older ones are dropped (our choice). */
export const keptSteps = 100;

export function historyOf<T>(present: T): History<T> {
  return { past: [], present, future: [], gesture: null };
}

/** A new present. With the gesture of the present one it replaces it, so that one undo takes back a whole drag. */
export function changed<T>(history: History<T>, next: T, gesture: string | null): History<T> {
  if (next === history.present) return history;
  const sameGesture = gesture !== null && gesture === history.gesture;
  const past = sameGesture ? history.past : [...history.past, history.present].slice(-keptSteps);
  return { past, present: next, future: [], gesture };
}

/** The hand rests: the next change is a step of its own. */
export function rested<T>(history: History<T>): History<T> {
  return history.gesture === null ? history : { ...history, gesture: null };
}

export function undone<T>(history: History<T>): History<T> {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
    gesture: null,
  };
}

export function redone<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future, gesture: null };
}
