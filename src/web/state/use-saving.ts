// Puts the enquiry down on the shop's server and keeps it there up to date while it changes.
// A change made elsewhere in the meantime is never overwritten: the person decides.
import { useCallback, useEffect, useState } from 'react';
import { createEnquiry, updateEnquiry } from '../api/client.ts';
import { useDocument } from './document-context.tsx';
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
  const { document, savedAs, setSavedAs } = useDocument();
  const [sending, setSending] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);

  const send = useCallback(
    async (as: SavedAs | null) => {
      setSending(true);
      const answer = as ? await updateEnquiry(as.id, as.version, document) : await createEnquiry(document);
      setSending(false);
      if (answer.ok) {
        setTrouble(null);
        setSavedAs({ id: answer.value.id, version: answer.value.version, mark: markOf(document) });
      } else if (answer.status === 409) setTrouble('changed-elsewhere');
      else setTrouble(answer.status === 0 || answer.status >= 500 ? 'unreachable' : 'refused');
    },
    [document, setSavedAs],
  );

  const unsent = savedAs !== null && savedAs.mark !== markOf(document);
  useEffect(() => {
    if (!unsent || sending || trouble === 'changed-elsewhere' || trouble === 'refused') return;
    const timer = setTimeout(() => void send(savedAs), trouble ? tryAgainMs : sendAfterMs);
    return () => clearTimeout(timer);
  }, [unsent, sending, trouble, send, savedAs]);

  let saving: Saving = 'device-only';
  if (trouble) saving = trouble;
  else if (sending || unsent) saving = 'saving';
  else if (savedAs) saving = 'saved';
  return { saving, keep: () => void send(savedAs), keepAsNew: () => void send(null) };
}
