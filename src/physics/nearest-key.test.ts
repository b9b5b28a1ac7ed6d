import { expect, it } from 'vitest';
import { editDistance, nearestKey } from './nearest-key.ts';

const known = ['lengthM', 'depthM', 'heightM', 'powerW', 'guarded'];

it.each([
  ['lenghtM', 'lengthM'],
  ['length', 'lengthM'],
  ['LENGTHM', 'lengthM'],
  ['power', 'powerW'],
  ['gaurded', 'guarded'],
  ['colour', null],
  ['', null],
  ['x'.repeat(10_000), null],
])('%s -> %s', (unknown, expected) => expect(nearestKey(unknown, known)).toBe(expected));

it.each([
  ['', 'abc', 3],
  ['abc', 'abc', 0],
  ['abc', 'acb', 1],
  ['kitten', 'sitting', 3],
])('distance of %s and %s is %i', (a, b, expected) => expect(editDistance(a, b)).toBe(expected));
