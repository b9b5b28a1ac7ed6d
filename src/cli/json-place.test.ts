import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonTrouble, lineAndColumn } from './json-place.ts';

it.each([
  ['', 0],
  ['{', 1],
  ['{"a":1,}', 7],
  ['{"a":1 "b":2}', 7],
  ["{'a':1}", 1],
  ['[1,2', 4],
  ['{"a":01}', 5],
  ['{"a":.5}', 5],
  ['{"a":NaN}', 5],
  ['{"a":1}x', 7],
  ['[1,,2]', 3],
  ['"open', 0],
  ['{"a":"tab\there"}', 5],
])('%s breaks at %i', (source, offset) => {
  expect(() => JSON.parse(source)).toThrow();
  expect(jsonTrouble(source)).toMatchObject({ kind: 'syntax', offset });
});

it('finds a key that comes twice, also when it is written differently', () => {
  expect(jsonTrouble('{"a":1,"b":{"a":2},"\\u0061":3}')).toEqual({ kind: 'twice', offset: 19, found: '"\\u0061"' });
});

it('has nothing against any JSON, however deep', () => {
  fc.assert(
    fc.property(fc.json(), (source) => {
      expect(jsonTrouble(source)).toBeNull();
    }),
  );
  expect(jsonTrouble('['.repeat(100_000) + ']'.repeat(100_000))).toBeNull();
});

it('agrees with JSON.parse on damaged JSON', () => {
  const damaged = fc.tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', ']', '0', '-', ' ', 'x', '\n'));
  fc.assert(
    fc.property(damaged, ([source, place, put]) => {
      const at = place % source.length;
      const broken = source.slice(0, at) + put + source.slice(at + 1);
      let parses = true;
      try {
        JSON.parse(broken);
      } catch {
        parses = false;
      }
      const trouble = jsonTrouble(broken);
      if (trouble?.kind !== 'twice') expect(trouble === null).toBe(parses);
    }),
    { numRuns: 3000 },
  );
});

it('counts lines and columns from one', () => {
  expect(lineAndColumn('ab\nc😀d', 6)).toEqual({ line: 2, column: 3 });
  expect(lineAndColumn('ab', 0)).toEqual({ line: 1, column: 1 });
});
