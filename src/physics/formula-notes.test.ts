// A formula used outside the range in which it was tested says so; a usual box says nothing.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadFacts } from '../records/facts.ts';
import type { Enclosure } from './enclosure.ts';
import { buildModel, solveSteady } from './simulate.ts';

const data = new URL('../../data/', import.meta.url);
const { facts } = loadFacts(data.pathname);
const wood = JSON.parse(readFileSync(new URL('examples/wood-1200.json', data), 'utf8')) as Enclosure;
const notes = (e: Enclosure, roomC: number, watts: number) =>
  solveSteady(buildModel(e, facts.materials), { roomC, roomRhPct: 50, sunWPerM2: 0, isDay: true, fixedW: [watts] })
    .notes;

test('a usual box is inside every range', () => {
  expect(notes(wood, 20, 100)).toEqual([]);
});

test('a bowl in air below 5 °C names formula, field, value and range', () => {
  const [note] = notes(wood, 1, 0);
  expect(note).toMatchObject({ code: 'PHYS_FORMULA_RANGE', field: 'airC', allowed: '5 to 50 °C' });
  expect(note!.say).toContain('extrapolated');
  expect(notes({ ...wood, bowl: null }, 1, 0)).toEqual([]);
});
