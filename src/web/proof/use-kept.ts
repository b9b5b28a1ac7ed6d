// Something the shop computer keeps, asked for once and again when told to (a new round asks again).
import { useCallback, useEffect, useState } from 'react';
import type { Asked } from '../animal/animal-api.ts';

/** @param read must stay the same function as long as the same thing is meant */
export function useKept<T>(read: () => Promise<Asked<T>>): {
  readonly answer: Asked<T> | null;
  readonly again: () => void;
} {
  const [answer, setAnswer] = useState<Asked<T> | null>(null);
  const [round, setRound] = useState(0);
  useEffect(() => {
    let current = true;
    void read().then((found) => {
      if (current) setAnswer(found);
    });
    return () => {
      current = false;
    };
  }, [read, round]);
  const again = useCallback(() => setRound((n) => n + 1), []);
  return { answer, again };
}
