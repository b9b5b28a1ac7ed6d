// The check module of measured boxes: one with a fan, and what was measured in still air.
import { loadFacts } from '../../src/records/facts.ts';
import type { CheckRow } from '../check-row.ts';
import { foamBoxRows } from './foam-box.ts';
import { stillRows } from './still-boxes.ts';

export async function cases(): Promise<CheckRow[]> {
  const { materials } = loadFacts(new URL('../../data', import.meta.url).pathname).facts;
  return [...foamBoxRows(materials), ...stillRows(materials)];
}
