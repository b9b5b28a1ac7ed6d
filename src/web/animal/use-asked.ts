// Something asked of the shop computer: waiting, here, or not reached; asked again when told to.
import { useCallback, useEffect, useState } from 'react';
import type { Asked } from './animal-api.ts';

export interface AskedState<T> {
  readonly value: T | null;
  readonly failed: boolean;
  readonly again: () => void;
}

/** @param key asked anew when it changes */
export function useAsked<T>(key: string, question: () => Promise<Asked<T>>): AskedState<T> {
  const [value, setValue] = useState<{ readonly key: string; readonly value: T } | null>(null);
  const [failed, setFailed] = useState(false);
  const [round, setRound] = useState(0);
  useEffect(() => {
    let wanted = true;
    void question().then((answer) => {
      if (!wanted) return;
      setFailed(!answer.ok);
      if (answer.ok) setValue({ key, value: answer.value });
    });
    return () => {
      wanted = false;
    };
  }, [key, round]);
  const again = useCallback(() => setRound((n) => n + 1), []);
  return { value: value?.key === key ? value.value : null, failed, again };
}
