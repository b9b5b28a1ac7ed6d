// An enquiry with a whole home, from the ready enclosures.
import { readFileSync } from 'node:fs';

export function exampleDocument(name = 'wood-1200'): Record<string, unknown> {
  const enclosure = JSON.parse(readFileSync(new URL(`../../../data/examples/${name}.json`, import.meta.url), 'utf8'));
  return { answers: { label: 'Test home' }, enclosure };
}
