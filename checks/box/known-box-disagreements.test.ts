// Every disagreement of a whole box is worked out on paper, and no paragraph of that page is about one that is gone.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { causes } from './known-box-disagreements.ts';

const page = readFileSync(new URL('../../docs/theory/box-against-others.md', import.meta.url), 'utf8');
const paragraphs = new Map([...page.matchAll(/^\*\*(\d+)\. (.*)$/gm)].map((m) => [Number(m[1]), m[2]!]));

describe('disagreements on paper', () => {
  it('paragraphs are numbered from 1 without a gap', () =>
    expect([...paragraphs.keys()]).toEqual(Array.from(paragraphs, (_, i) => i + 1)));

  it.each(causes.map((c) => [c.id, c.quantities[0]!, c] as const))('%s, %s has its paragraph', (_, __, cause) => {
    const text = paragraphs.get(cause.paper);
    expect(text, `paragraph ${cause.paper}`).toBeDefined();
    expect(text!.length).toBeGreaterThan(150);
  });

  it('a paragraph that no listed disagreement needs says that the figure lies within its band', () => {
    const needed = new Set(causes.map((c) => c.paper));
    const stale = [...paragraphs].filter(([n, text]) => !needed.has(n) && !/within/i.test(text));
    expect(stale).toEqual([]);
  });

  it('says who is right, each time', () => {
    const silent = [...paragraphs].filter(
      ([, text]) => !/right|nearer|neither|undecided|within|not stated|ours|cannot tell/i.test(text),
    );
    expect(silent.map(([n]) => n)).toEqual([]);
  });
});
