// Reads the folder data/ and hands its JSON to the pure check. Leaves out: what is right (husbandry/facts.ts).
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type CheckedFacts, factsFrom, type RawFacts } from '../husbandry/facts.ts';
import type { Fault } from '../shared/fault.ts';

/** Raw JSON of every .json file below the folder; examples and words of other languages are left out. A file that is not JSON becomes a fault. */
export function readRawFacts(folder: string): { readonly raw: RawFacts; readonly faults: readonly Fault[] } {
  const raw: Record<string, unknown> = {};
  const faults: Fault[] = [];
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.json'));
  for (const name of names.sort()) {
    const path = relative('.', name).split(sep).join('/');
    if (path.startsWith('examples/') || path.startsWith('words/')) continue;
    try {
      raw[path] = JSON.parse(readFileSync(join(folder, name), 'utf8'));
    } catch (error) {
      const say = error instanceof Error ? error.message : String(error);
      faults.push({
        code: 'DATA_JSON',
        field: path,
        got: say,
        allowed: 'JSON',
        say: 'The file is not JSON.',
        fix: 'Correct the file.',
      });
    }
  }
  return { raw, faults };
}

/** Facts of a folder with every complaint; the program can run on what is sound. */
export function loadFacts(folder: string): CheckedFacts {
  const { raw, faults } = readRawFacts(folder);
  const checked = factsFrom(raw);
  return { facts: checked.facts, faults: [...faults, ...checked.faults] };
}
