// What the keeper's phone keeps: the page as it was last seen, and readings that wait to be sent. One set for each link.
import type { SentReading } from './keeper-api.ts';

const key = (secret: string, what: 'page' | 'queue'): string => `warmstead-keeper-${what}-${secret}`;

export function keptPage(secret: string): unknown {
  return parsed(localStorage.getItem(key(secret, 'page')));
}

export function keepPage(secret: string, page: unknown): void {
  localStorage.setItem(key(secret, 'page'), JSON.stringify(page));
}

/** A link that no longer works leaves nothing on the phone. */
export function forget(secret: string): void {
  localStorage.removeItem(key(secret, 'page'));
  localStorage.removeItem(key(secret, 'queue'));
}

export function waiting(secret: string): readonly SentReading[] {
  const list = parsed(localStorage.getItem(key(secret, 'queue')));
  return Array.isArray(list) ? (list as readonly SentReading[]) : [];
}

export function queue(secret: string, reading: SentReading): void {
  localStorage.setItem(key(secret, 'queue'), JSON.stringify([...waiting(secret), reading]));
}

/** Takes out what was sent or refused; what came in meanwhile stays. */
export function unqueue(secret: string, keys: readonly string[]): void {
  localStorage.setItem(
    key(secret, 'queue'),
    JSON.stringify(waiting(secret).filter((r) => !keys.includes(r.clientKey))),
  );
}

function parsed(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
