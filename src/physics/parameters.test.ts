// The best values in code and in data/priors.json are the same, and every prior holds its best value.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { bestParameters, parameterNames } from './parameters.ts';

const priors: { name: keyof typeof bestParameters; best: number; low: number; high: number; source: string }[] =
  JSON.parse(readFileSync(new URL('../../data/priors.json', import.meta.url), 'utf8'));

test('every uncertain parameter has one prior, with its best value inside its range', () => {
  expect(priors.map((p) => p.name).sort()).toEqual([...parameterNames].sort());
  for (const p of priors) {
    expect(p.best, p.name).toBe(bestParameters[p.name]);
    expect(p.low, p.name).toBeLessThan(p.best);
    expect(p.high, p.name).toBeGreaterThan(p.best);
    expect(p.source, p.name).not.toBe('');
  }
});
