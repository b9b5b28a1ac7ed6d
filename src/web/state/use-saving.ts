// Puts the enquiry down on the shop's server and keeps it there up to date while it changes.
// A change made elsewhere in the meantime is never overwritten: the person decides.
import { useCallback, useEffect, useMemo, useState } from 'react';
import { createEnquiry, updateEnquiry } from '../api/client.ts';
import { useDocumentPart, useDocumentStore } from './document-context.tsx';
import { markOf } from './document-mark.ts';
import type { SavedAs } from './draft-storage.ts';

export type Saving = 'device-only' | 'saving' | 'saved' | 'unreachable' | 'refused' | 'changed-elsewhere';

/** Changes rest this long before they are sent [ms] (our choice). */
const sendAfterMs = 1200;
/** When the server did not answer, it is tried again after this long [ms] (our choice). */
const tryAgainMs = 15_000;

export interface Keeping {
  readonly saving: Saving;
  /** Put it down now; from then on it is kept up to date by itself. */
  readonly keep: () => void;
  /** After a change elsewhere: put this one down as a new enquiry. */
  readonly keepAsNew: () => void;
}

type Trouble = 'unreachable' | 'refused' | 'changed-elsewhere';

export function useSaving(): Keeping {
  const store = useDocumentStore();
  const savedAs = useDocumentPart((state) => state.savedAs);
  const [sending, setSending] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);

  const send = useCallback(
    async (as: SavedAs | null) => {
      const { document } = store.state();
      setSending(true);
      const answer = as ? await updateEnquiry(as.id, as.version, document) : await createEnquiry(document);
      setSending(false);
      if (answer.ok) {
        setTrouble(null);
        store.actions.setSavedAs({ id: answer.value.id, version: answer.value.version, mark: markOf(document) });
      } else if (answer.status === 409) setTrouble('changed-elsewhere');
      else setTrouble(answer.status === 0 || answer.status >= 500 ? 'unreachable' : 'refused');
    },
    [store],
  );

  const unsent = useDocumentPart((state) => state.savedAs !== null && state.savedAs.mark !== markOf(state.document));
  useEffect(() => {
    if (!unsent || sending || trouble === 'changed-elsewhere' || trouble === 'refused') return;
    const later = () => setTimeout(() => void send(store.state().savedAs), trouble ? tryAgainMs : sendAfterMs);
    let timer = later();
    const leave = store.subscribe(() => {
      clearTimeout(timer);
      timer = later();
    });
    return () => {
      clearTimeout(timer);
      leave();
    };
  }, [unsent, sending, trouble, send, store]);

  let saving: Saving = 'device-only';
  if (trouble) saving = trouble;
  else if (sending || unsent) saving = 'saving';
  else if (savedAs) saving = 'saved';
  return useMemo(
    () => ({ saving, keep: () => void send(store.state().savedAs), keepAsNew: () => void send(null) }),
    [saving, send, store],
  );
}
