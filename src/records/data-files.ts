// Reads the JSON files of data/ as they are. Leaves out whether they are sound (facts.ts and `npm run data`).
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { programRoot } from './root.ts';

export type DataRow = Record<string, unknown>;

/** One file of data/, e.g. "materials.json": an object or a list of rows. */
export function dataFile(name: string): DataRow | readonly DataRow[] {
  return JSON.parse(readFileSync(join(programRoot(), 'data', name), 'utf8')) as DataRow | readonly DataRow[];
}

/** Every file of a folder of data/ by its name without ".json", in the order of the names. */
export function dataFolder(name: string): Readonly<Record<string, DataRow>> {
  const files = readdirSync(join(programRoot(), 'data', name)).filter((file) => file.endsWith('.json'));
  return Object.fromEntries(files.sort().map((file) => [file.slice(0, -5), dataFile(join(name, file)) as DataRow]));
}
