// The round on this device: the last one that was fetched, with what was touched since laid over it; works without
// a connection and sends by itself when there is one.
import { useCallback, useEffect, useState } from 'react';
import type { EventBodies } from '../../animal/event.ts';
import type { RoundLine } from '../../animal/round.ts';
import { type RoundAnswer, readRound } from '../animal/animal-api.ts';
import { queueCheck, type Refused, sendWaiting, type WaitingCheck, waitingChecks } from './round-queue.ts';

const storageKey = 'warmstead-round-last-1';
const retryMs = 15_000;

function lastRound(): RoundAnswer | null {
  try {
    return JSON.parse(localStorage.getItem(storageKey) ?? 'null') as RoundAnswer | null;
  } catch {
    return null;
  }
}

/** The day on this device, written yyyy-mm-dd. */
const deviceDay = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export interface RoundOnDevice {
  readonly lines: readonly RoundLine[] | null;
  readonly waiting: number;
  readonly refused: readonly Refused[];
  readonly failed: boolean;
  readonly check: (line: RoundLine, body: EventBodies['round']) => void;
  readonly again: () => void;
}

export function useRound(): RoundOnDevice {
  const [fetched, setFetched] = useState<RoundAnswer | null>(lastRound);
  const [waiting, setWaiting] = useState<readonly WaitingCheck[]>(waitingChecks);
  const [refused, setRefused] = useState<readonly Refused[]>([]);
  const [failed, setFailed] = useState(false);
  const refresh = useCallback(async () => {
    const sent = await sendWaiting();
    if (sent !== null && sent.length > 0) setRefused((now) => [...now, ...sent]);
    const answer = await readRound();
    setFailed(!answer.ok);
    if (answer.ok) {
      localStorage.setItem(storageKey, JSON.stringify(answer.value));
      setFetched(answer.value);
    }
    setWaiting(waitingChecks());
  }, []);
  useEffect(() => {
    void refresh();
    const again = () => void refresh();
    addEventListener('online', again);
    const timer = setInterval(() => {
      if (waitingChecks().length > 0) again();
    }, retryMs);
    return () => {
      removeEventListener('online', again);
      clearInterval(timer);
    };
  }, [refresh]);
  const check = (line: RoundLine, body: EventBodies['round']) => {
    const at = new Date().toISOString();
    queueCheck(
      line.animals.map(({ animalId }) => ({ clientKey: crypto.randomUUID(), animalId, on: deviceDay(), at, body })),
    );
    setWaiting(waitingChecks());
    void refresh();
  };
  const lines = fetched ? fetched.lines.map((line) => laidOver(line, waiting, fetched.today)) : null;
  return { lines, waiting: waiting.length, refused, failed, check, again: () => void refresh() };
}

/** A line as it will be when what waits has arrived. A fetched round of another day is to do again. */
export function laidOver(
  line: RoundLine,
  waiting: readonly WaitingCheck[],
  fetchedDay: string,
  today = deviceDay(),
): RoundLine {
  const fresh = today > fetchedDay && line.lastOn !== today ? { ...line, state: 'to-do' as const, reasons: [] } : line;
  const own = waiting.filter(
    (check) => check.on === today && line.animals.some(({ animalId }) => animalId === check.animalId),
  );
  const last = own.at(-1);
  const all = line.animals.every(({ animalId }) => own.some((check) => check.animalId === animalId));
  if (!last || !all) return fresh;
  const { state, water, locked, note } = last.body;
  const odd = state !== 'well' || !water || !locked;
  const reasons = odd ? [{ key: 'round.look' as const, blanks: { note: note || '…' } }] : [];
  return { ...fresh, state: odd ? 'stands-out' : 'well', reasons, missedDays: 0, lastOn: today };
}
