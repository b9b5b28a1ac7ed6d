// Keeps the last steps of a document on this device, so that what was done before a reload can still be taken back.
// Leaves out the document itself (draft-storage.ts).
import type { PlanDocument } from './document.ts';
import { markOf } from './document-mark.ts';
import { type Draft, isPlanDocument, type SavedAs, withEveryAnswer } from './draft-storage.ts';
import { type History, historyOf } from './history.ts';

const storageKey = 'warmstead-steps-1';

/** Steps either way that survive a reload; our choice: more than anybody takes back by hand, less than a device minds. */
export const stepsOnDevice = 30;

/** A document of the line, and where it was kept when a fresh start left it behind. */
interface Step {
  readonly document: PlanDocument;
  readonly left: SavedAs | null;
}

interface Steps {
  /** Of the enquiry that they belong to; null before it is kept. */
  readonly enquiryId: string | null;
  readonly past: readonly Step[];
  readonly present: PlanDocument;
  readonly future: readonly Step[];
}

export interface Line {
  readonly history: History<PlanDocument>;
  readonly savedAs: SavedAs | null;
  /** Where documents were kept that a fresh start left behind. */
  readonly left: ReadonlyMap<PlanDocument, SavedAs>;
}

/** @param leftAt  where a document was kept that a fresh start left behind */
export function stepsText(
  { past, present, future }: History<PlanDocument>,
  savedAs: SavedAs | null,
  leftAt: (document: PlanDocument) => SavedAs | undefined,
): string {
  const step = (document: PlanDocument): Step => ({ document, left: leftAt(document) ?? null });
  const kept: Steps = {
    enquiryId: savedAs?.id ?? null,
    past: past.slice(-stepsOnDevice).map(step),
    present,
    future: future.slice(0, stepsOnDevice).map(step),
  };
  return JSON.stringify(kept);
}

/** The draft with the steps around it. Steps of another enquiry are none of it; a draft that went on after the steps were
 *  kept goes back to where they stood. */
export function lineFrom(text: string | null, draft: Draft): Line {
  const alone = { history: historyOf(draft.document), savedAs: draft.savedAs, left: new Map() };
  const kept = stepsIn(text);
  if (kept === null) return alone;
  const left = new Map<PlanDocument, SavedAs>();
  const read = (step: Step): PlanDocument => {
    const document = withEveryAnswer(step.document);
    if (step.left !== null) left.set(document, step.left);
    return document;
  };
  const stood = withEveryAnswer(kept.present);
  const past = kept.past.map(read);
  if (markOf(stood) === markOf(draft.document)) {
    const history = { past, present: draft.document, future: kept.future.map(read), gesture: null };
    return { history, savedAs: draft.savedAs, left };
  }
  if (kept.enquiryId !== (draft.savedAs?.id ?? null)) return alone;
  return {
    history: { past: [...past, stood], present: draft.document, future: [], gesture: null },
    savedAs: draft.savedAs,
    left,
  };
}

function stepsIn(text: string | null): Steps | null {
  try {
    const raw = JSON.parse(text ?? 'null') as Steps | null;
    if (raw === null) return null;
    const documents = [raw.present, ...[...raw.past, ...raw.future].map((step) => step.document)];
    return documents.every(isPlanDocument) ? raw : null;
  } catch {
    // Steps that cannot be read are none; the draft still stands.
    return null;
  }
}

export const keptSteps = (): string | null => {
  try {
    return localStorage.getItem(storageKey);
  } catch {
    return null;
  }
};

export function storeSteps(text: string): void {
  try {
    localStorage.setItem(storageKey, text);
  } catch {
    // Full or refused: steps end with this visit. Old ones would belong to another present.
    try {
      localStorage.removeItem(storageKey);
    } catch {
      // Nothing is kept on this device at all.
    }
  }
}
