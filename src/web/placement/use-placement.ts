// One placement as the shop computer has it, with what waits on this device; sent again until it is answered.
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Asked } from '../animal/animal-api.ts';
import { type PlacementSheet, readPlacement } from './placement-api.ts';
import { addWaiting, sendWaiting, waitingOf } from './placement-store.ts';

const retryMs = 4_000;

export interface PlacementOnDevice {
  readonly sheet: PlacementSheet | null;
  readonly failed: boolean;
  /** The last answer, when it was a refusal. */
  readonly refused: Asked<unknown> | null;
  /** Doors of what was sent and not answered yet. */
  readonly waiting: readonly string[];
  readonly act: (door: string, body: object) => void;
  readonly again: () => void;
}

export function usePlacement(id: string): PlacementOnDevice {
  const [sheet, setSheet] = useState<PlacementSheet | null>(null);
  const [failed, setFailed] = useState(false);
  const [refused, setRefused] = useState<Asked<unknown> | null>(null);
  const [waiting, setWaiting] = useState<readonly string[]>(() => waitingOf(id).map((one) => one.door));
  const sending = useRef(false);
  const refresh = useCallback(async () => {
    if (sending.current) return;
    sending.current = true;
    const sent = await sendWaiting(id);
    if (sent !== null) setRefused(sent.ok || sent.status === 0 ? null : sent);
    const answer = sent?.ok ? sent : await readPlacement(id);
    setFailed(!answer.ok);
    if (answer.ok) setSheet(answer.value);
    setWaiting(waitingOf(id).map((one) => one.door));
    sending.current = false;
  }, [id]);
  useEffect(() => {
    void refresh();
    const again = () => void refresh();
    addEventListener('online', again);
    addEventListener('focus', again);
    const timer = setInterval(() => {
      if (waitingOf(id).length > 0) again();
    }, retryMs);
    return () => {
      removeEventListener('online', again);
      removeEventListener('focus', again);
      clearInterval(timer);
    };
  }, [id, refresh]);
  const act = (door: string, body: object) => {
    addWaiting(id, door, body);
    setWaiting(waitingOf(id).map((one) => one.door));
    void refresh();
  };
  return { sheet, failed, refused, waiting, act, again: () => void refresh() };
}
