// What somebody has begun to write in a form, kept on this device until it is sent or left: a reload, a call or a flat
// battery loses nothing. Leaves out passwords and PINs, which are never kept, and the enquiry (draft-storage.ts).
import { useRef, useState } from 'react';

const keyOf = (place: string): string => `warmstead-begun-1-${place}`;
/** What nobody has gone on with for so long is not shown again [ms] (our choice: a month). */
const longestMs = 30 * 86_400_000;

/** @param place  names the form and what it belongs to, e.g. "entry-<id of the animal>" */
export function begunAt<T extends object>(place: string): Partial<T> | null {
  try {
    const raw = JSON.parse(localStorage.getItem(keyOf(place)) ?? 'null') as { at: number; part: Partial<T> } | null;
    return raw !== null && Date.now() - raw.at < longestMs ? raw.part : null;
  } catch {
    return null;
  }
}

/** @param part  null when nothing is begun any more */
export function keepBegun(place: string, part: object | null): void {
  try {
    if (part === null) localStorage.removeItem(keyOf(place));
    else localStorage.setItem(keyOf(place), JSON.stringify({ at: Date.now(), part }));
  } catch {
    // A device without storage loses it on reload, and works otherwise.
  }
}

/** Whether something was begun here before the sheet was opened: then the form stands open. */
export const useWasBegun = (place: string): boolean => useState(() => begunAt(place) !== null)[0];

export interface Begun<T> {
  readonly now: T;
  readonly change: (part: Partial<T>) => void;
  /** As it is at this moment: a field gives its number when it is left, and pressing a button leaves it. */
  readonly newest: () => T;
  /** It was sent or left: from here it starts anew. */
  readonly forget: () => void;
}

/** @param place  null where there is nothing yet that it could belong to: then it is not kept
 *  @param start  what stands there when nothing was begun; only what differs from it is kept */
export function useBegun<T extends object>(place: string | null, start: T): Begun<T> {
  const [now, setNow] = useState<T>(() => ({ ...start, ...(place === null ? null : begunAt<T>(place)) }));
  const newest = useRef(now);
  const put = (next: T) => {
    newest.current = next;
    setNow(next);
  };
  return {
    now,
    newest: () => newest.current,
    change: (part) => {
      put({ ...newest.current, ...part });
      if (place !== null) keepBegun(place, differing(newest.current, start));
    },
    forget: () => {
      put(start);
      if (place !== null) keepBegun(place, null);
    },
  };
}

function differing<T extends object>(now: T, start: T): Partial<T> | null {
  const was = start as Record<string, unknown>;
  const parts = Object.entries(now).filter(([key, value]) => JSON.stringify(value) !== JSON.stringify(was[key]));
  return parts.length === 0 ? null : (Object.fromEntries(parts) as Partial<T>);
}
