// Work that the shop computer does while somebody waits: what it is at, for how long already, and the way to stop it. After
// a stop the shop computer is asked whether anything of it was kept, and that is what is said.
// Leaves out what is worked at; the search has its own line, with how far it is (choose-page.tsx).
import { useEffect, useRef, useState } from 'react';
import { stopOnServer } from '../api/stop-work.ts';
import { useSheet } from '../settings/settings-context.tsx';

/** "nothing": nothing of it is kept. "kept": what was ready before the stop came is. "not-known": the shop computer gave
 *  no answer. */
export type Stopped = 'nothing' | 'kept' | 'not-known';

/** One thing that is waited for; a stop names the one that is under way. */
export interface Part {
  readonly signal: AbortSignal;
  /** Under this name the shop computer keeps its outcome, or is told not to. */
  readonly workId: string;
}

export interface Waited<T> {
  /** When it was begun, by the device's clock [ms]; null when nothing runs. */
  readonly sinceMs: number | null;
  /** Null unless it was stopped. */
  readonly stopped: Stopped | null;
  /** Ids of what was kept before the stop came. */
  readonly keptIds: readonly string[];
  /** @param work  asks for the name of each part anew when it has several
   *  @returns null when it was stopped */
  readonly run: (work: (part: () => Part) => Promise<T>) => Promise<T | null>;
  readonly stop: () => void;
}

/** @param keeps  whether an outcome is kept at the shop computer; else ending the waiting is all */
export function useLongWork<T>({ keeps }: { readonly keeps: boolean }): Waited<T> {
  const [sinceMs, setSince] = useState<number | null>(null);
  const [stopped, setStopped] = useState<Stopped | null>(null);
  const [keptIds, setKeptIds] = useState<readonly string[]>([]);
  const running = useRef<AbortController | null>(null);
  return {
    sinceMs,
    stopped,
    keptIds,
    run: async (work) => {
      const mine = new AbortController();
      const parts: string[] = [];
      running.current = mine;
      setStopped(null);
      setKeptIds([]);
      setSince(Date.now());
      const done = await work(() => {
        const workId = crypto.randomUUID();
        parts.push(workId);
        return { signal: mine.signal, workId };
      });
      const { aborted } = mine.signal;
      const outcome = aborted ? await outcomeOf(keeps ? parts : []) : null;
      setSince(null);
      setStopped(outcome?.stopped ?? null);
      setKeptIds(outcome?.keptIds ?? []);
      return aborted ? null : done;
    },
    stop: () => running.current?.abort(),
  };
}

/** Each part is asked about, the one under way and those that were through before it. */
async function outcomeOf(parts: readonly string[]): Promise<{ stopped: Stopped; keptIds: readonly string[] }> {
  const ends = await Promise.all(parts.map(stopOnServer));
  const keptIds = ends.flatMap((end) => (end?.ended === 'kept' && end.keptId !== null ? [end.keptId] : []));
  if (ends.some((end) => end?.ended === 'kept')) return { stopped: 'kept', keptIds };
  return { stopped: ends.includes(null) ? 'not-known' : 'nothing', keptIds };
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
      {sinceMs === null && stopped !== null && <span>{t(`work.stopped.${stopped}`)}</span>}
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
