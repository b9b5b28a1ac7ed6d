// Makes entries about an animal for tests.
import type { AnimalEvent, EventBodies, EventKind } from '../event.ts';

let made = 0;

/** An entry on a day at noon; later made ones of one day come later. */
export function entry<K extends EventKind>(kind: K, on: string, body: EventBodies[K]): AnimalEvent {
  made += 1;
  const at = `${on}T12:00:${String(made).padStart(9, '0')}Z`;
  return { id: `e${made}`, kind, on, at, body, by: 'tester' } as unknown as AnimalEvent;
}
