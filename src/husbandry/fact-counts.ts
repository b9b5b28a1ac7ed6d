// How many facts were read on a page, how many stand on memory or common practice, how many were measured.
import { isRecord } from './fact-check.ts';

export interface ReadCounts {
  page: number;
  memory: number;
  measured: number;
}

/** Counts of one tree: every object that carries a source and a read mark counts once. */
function countIn(x: unknown, counts: ReadCounts): ReadCounts {
  if (Array.isArray(x)) {
    for (const item of x) countIn(item, counts);
  } else if (isRecord(x)) {
    const read = x.read;
    if (typeof x.source === 'string' && (read === 'page' || read === 'memory' || read === 'measured'))
      counts[read] += 1;
    for (const item of Object.values(x)) countIn(item, counts);
  }
  return counts;
}

/** Counts by kind of file: "species" taken together, every other table by its own name. */
export function readMarkCounts(raw: Readonly<Record<string, unknown>>): Readonly<Record<string, ReadCounts>> {
  const out: Record<string, ReadCounts> = {};
  for (const [path, json] of Object.entries(raw)) {
    if (path === 'sources.json') continue;
    const name = path.startsWith('species/') ? 'species' : path.replace(/\.json$/, '');
    out[name] ??= { page: 0, memory: 0, measured: 0 };
    countIn(json, out[name]);
  }
  return out;
}
