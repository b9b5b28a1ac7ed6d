import { expect, test } from 'vitest';
import { eventsOf, lastOf } from './event.ts';
import { entry } from './testing/entry.ts';

test('entries come back by kind, oldest first', () => {
  const events = [entry('weighing', '2026-02-01', { massG: 2 }), entry('weighing', '2026-01-01', { massG: 1 })];
  expect(eventsOf(events, 'weighing').map((event) => event.body.massG)).toEqual([1, 2]);
  expect(lastOf(events, 'weighing')?.body.massG).toBe(2);
  expect(lastOf(events, 'feeding')).toBeNull();
});
