// Words in a field that outlive a reload: kept on this device until they are sent or taken out.
import { useState } from 'react';
import { draftsOf, keepDraft } from './placement-store.ts';

/** The words, changing them, and: they are sent, from now on these are shown. */
export type Draft = readonly [string, (text: string) => void, (shown: string) => void];

/** Whether one of these fields was begun before the sheet was opened: then its fold stands open. */
export const useHadDraft = (placementId: string, ...fields: readonly string[]): boolean =>
  useState(() => fields.some((field) => draftsOf(placementId)[field] !== undefined))[0];

/** @param field e.g. "vet"  @param first stands there when nothing was begun */
export function useDraft(placementId: string, field: string, first = ''): Draft {
  const [text, setText] = useState(() => draftsOf(placementId)[field] ?? first);
  const set = (next: string) => {
    setText(next);
    keepDraft(placementId, field, next);
  };
  const sent = (shown: string) => {
    setText(shown);
    keepDraft(placementId, field, '');
  };
  return [text, set, sent];
}
