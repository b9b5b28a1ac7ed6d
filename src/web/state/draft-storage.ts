// Keeps the unsent enquiry on this device, so that a reload or a flat battery loses nothing.

import { documentFormat, documentVersion, emptyDocument, type PlanDocument } from './document.ts';

const storageKey = 'warmstead-draft-1';

/** The server's own name for a saved enquiry and the version last seen there. */
export interface SavedAs {
  readonly id: string;
  readonly version: number;
  /** Mark of the document as the server has it (document-mark.ts). */
  readonly mark: string;
}

export interface Draft {
  readonly document: PlanDocument;
  readonly savedAs: SavedAs | null;
}

export function isPlanDocument(raw: unknown): raw is PlanDocument {
  if (typeof raw !== 'object' || raw === null) return false;
  const row = raw as Record<string, unknown>;
  return row.format === documentFormat && row.version === documentVersion && typeof row.answers === 'object';
}

/** A stored document with answers added since it was written filled in as open. */
export function withEveryAnswer(document: PlanDocument): PlanDocument {
  return { ...document, answers: { ...emptyDocument.answers, ...document.answers } };
}

export function loadDraft(): Draft {
  try {
    const raw = JSON.parse(localStorage.getItem(storageKey) ?? 'null') as Draft | null;
    if (raw && isPlanDocument(raw.document)) {
      return { document: withEveryAnswer(raw.document), savedAs: raw.savedAs ?? null };
    }
  } catch {
    // An unreadable draft is no draft.
  }
  return { document: emptyDocument, savedAs: null };
}

export function storeDraft(draft: Draft): void {
  try {
    localStorage.setItem(storageKey, JSON.stringify(draft));
  } catch {
    // Storage may be full or refused; the sheet still works for this visit.
  }
}
