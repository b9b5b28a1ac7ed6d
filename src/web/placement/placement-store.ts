// What one device keeps of a placement until the shop computer has it: half-filled statements, and what was sent and not
// answered, each with its token. A reload or a power cut loses nothing, and nothing is done twice.
import { type Asked, ask } from '../animal/animal-api.ts';
import type { PlacementSheet } from './placement-api.ts';

export interface Waiting {
  readonly token: string;
  /** Last part of the door, e.g. "release". */
  readonly door: string;
  readonly body: object;
}

const draftKey = (id: string): string => `warmstead-placement-draft-1-${id}`;
const waitingKey = (id: string): string => `warmstead-placement-waiting-1-${id}`;

function kept<T>(key: string, none: T): T {
  try {
    return (JSON.parse(localStorage.getItem(key) ?? 'null') as T | null) ?? none;
  } catch {
    return none;
  }
}

function keep(key: string, value: object, empty: boolean): void {
  try {
    if (empty) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // A device without storage loses drafts on reload, and works otherwise.
  }
}

/** Words that somebody has begun to write, by the field they stand in. */
export const draftsOf = (id: string): Readonly<Record<string, string>> => kept(draftKey(id), {});

export function keepDraft(id: string, field: string, text: string): void {
  const { [field]: _gone, ...rest } = draftsOf(id);
  const drafts = text === '' ? rest : { ...rest, [field]: text };
  keep(draftKey(id), drafts, Object.keys(drafts).length === 0);
}

export const waitingOf = (id: string): readonly Waiting[] => kept(waitingKey(id), []);

const keepWaiting = (id: string, list: readonly Waiting[]): void => keep(waitingKey(id), list, list.length === 0);

export function addWaiting(id: string, door: string, body: object): void {
  keepWaiting(id, [...waitingOf(id), { token: crypto.randomUUID(), door, body }]);
}

/** No answer, or one that says nothing about what was sent: it is sent again. */
const unanswered = (answer: Asked<unknown>): boolean => !answer.ok && [0, 429, 502, 503, 504].includes(answer.status);

/** Sends what waits, oldest first, until one is not answered. @returns the last answer; null when nothing waited */
export async function sendWaiting(id: string): Promise<Asked<PlacementSheet> | null> {
  let last: Asked<PlacementSheet> | null = null;
  for (let next = waitingOf(id)[0]; next !== undefined; next = waitingOf(id)[0]) {
    const { token, door, body } = next;
    last = await ask<PlacementSheet>(`/api/placements/${encodeURIComponent(id)}/${door}`, 'POST', { ...body, token });
    if (unanswered(last)) return last;
    keepWaiting(
      id,
      waitingOf(id).filter((one) => one.token !== token),
    );
    // What was to follow was meant for a placement that stands otherwise now.
    if (!last.ok) return last;
  }
  return last;
}
