// What the picture of effects must keep: every belief has its row, the strongest first, and a belief without width moves nothing.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Priors } from '../../src/physics/priors.ts';
import { enclosureFrom } from '../../src/physics/validate-enclosure.ts';
import { loadFacts } from '../../src/records/facts.ts';
import { effectsOf } from './effects.ts';
import { tornadoSvg } from './picture.ts';

const root = new URL('../../', import.meta.url).pathname;
const { materials } = loadFacts(`${root}data`).facts;
const priors = JSON.parse(readFileSync(`${root}data/priors.json`, 'utf8')) as Priors;
const read = enclosureFrom(JSON.parse(readFileSync(`${root}data/examples/tub-mat-600.json`, 'utf8')), materials);
if (!read.ok) throw new Error('the example is sound');
const effects = effectsOf(read.value, materials, priors);

test('every belief has its row, the strongest on the basking surface first', () => {
  expect(new Set(effects.map((e) => e.name))).toEqual(new Set(priors.map((p) => p.name)));
  const widths = effects.map((e) => e.width.basking!);
  expect(widths).toEqual([...widths].sort((a, b) => b - a));
  expect(widths[0]).toBeGreaterThan(0.5);
});

test('a belief without width moves nothing', () => {
  const narrow = priors.map((p) => ({ ...p, low: p.best, high: p.best }));
  if (!read.ok) throw new Error('the example is sound');
  for (const e of effectsOf(read.value, materials, narrow)) expect(Math.abs(e.width.basking!)).toBeLessThan(0.01);
});

test('the picture names every belief and holds no broken number', () => {
  const svg = tornadoSvg('Plastic tub', effects);
  for (const e of effects) expect(svg).toContain(`>${e.words}</text>`);
  expect(svg).not.toMatch(/NaN|Infinity|undefined/);
});
