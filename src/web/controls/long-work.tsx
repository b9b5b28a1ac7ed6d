// Work that the shop computer does while somebody waits: what it is at, for how long already, and the way to stop it.
// Leaves out what is worked at; the search has its own line, with how far it is (choose-page.tsx).
import { useEffect, useRef, useState } from 'react';
import { useSheet } from '../settings/settings-context.tsx';

export interface Waited<T> {
  /** When it was begun, by the device's clock [ms]; null when nothing runs. */
  readonly sinceMs: number | null;
  readonly stopped: boolean;
  /** @returns null when it was stopped */
  readonly run: (work: (signal: AbortSignal) => Promise<T>) => Promise<T | null>;
  readonly stop: () => void;
}

export function useLongWork<T>(): Waited<T> {
  const [sinceMs, setSince] = useState<number | null>(null);
  const [stopped, setStopped] = useState(false);
  const running = useRef<AbortController | null>(null);
  return {
    sinceMs,
    stopped,
    run: async (work) => {
      const mine = new AbortController();
      running.current = mine;
      setStopped(false);
      setSince(Date.now());
      const done = await work(mine.signal);
      setSince(null);
      setStopped(mine.signal.aborted);
      return mine.signal.aborted ? null : done;
    },
    stop: () => running.current?.abort(),
  };
}

interface LongWorkProps {
  readonly work: Pick<Waited<unknown>, 'sinceMs' | 'stopped' | 'stop'>;
  readonly words: string;
  /** How much of it is done, 0 to 1; absent where nobody knows. */
  readonly doneFrac?: number;
}

export function LongWork({ work, words, doneFrac }: LongWorkProps) {
  const { t } = useSheet();
  const { sinceMs, stopped, stop } = work;
  return (
    <div className="long-work" role="status">
      {sinceMs !== null && (
        <>
          <span>{words}</span>
          <Seconds sinceMs={sinceMs} />
          <progress max={1} {...(doneFrac === undefined ? {} : { value: doneFrac })} aria-label={words} />
          <button type="button" className="quiet-button" onClick={stop}>
            {t('work.stop')}
          </button>
        </>
      )}
      {sinceMs === null && stopped && <span>{t('work.stopped')}</span>}
    </div>
  );
}

/** Not read out: a screen reader would speak every second of it. */
function Seconds({ sinceMs }: { readonly sinceMs: number }) {
  const { t } = useSheet();
  const [nowMs, setNow] = useState(sinceMs);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return <span aria-hidden="true">{t('work.seconds', { n: Math.max(0, Math.round((nowMs - sinceMs) / 1000)) })}</span>;
}
