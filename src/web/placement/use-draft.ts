// Words in a field that outlive a reload: kept on this device until they are sent or taken out.
import { useState } from 'react';
import { draftsOf, keepDraft } from './placement-store.ts';

/** @param field e.g. "vet"  @param first stands there when nothing was begun */
export function useDraft(placementId: string, field: string, first = ''): readonly [string, (text: string) => void] {
  const [text, setText] = useState(() => draftsOf(placementId)[field] ?? first);
  const set = (next: string) => {
    setText(next);
    keepDraft(placementId, field, next);
  };
  return [text, set];
}
