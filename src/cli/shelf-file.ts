// The shop's shelf from a file, a table or JSON, or the starter shelf when none is named.
import type { Facts } from '../husbandry/fact.ts';
import { usualTariff } from '../planning/search/search-input.ts';
import type { Shelf } from '../planning/shelf/shelf.ts';
import { shelfFromCsv } from '../planning/shelf/shelf-csv.ts';
import { shelfFrom, shelfMaterialFaults } from '../planning/shelf/validate-shelf.ts';
import { dataFile } from '../records/data-files.ts';
import { bad, type Result } from '../shared/result.ts';
import { jsonFrom, readText } from './input.ts';
import type { RunContext } from './run-context.ts';

/** @param currency for a table that does not say it */
export async function shelfOfFile(
  file: string | null,
  currency: string | null,
  facts: Facts,
  run: RunContext,
): Promise<Result<Shelf>> {
  if (file === null) return shelfFrom(dataFile('shelf/starter.json'));
  const text = await readText(file, run.terminal, run.messages);
  if (!text.ok) return text;
  if (!/^\s*[[{]/.test(text.value)) {
    const name = file === '-' ? 'shelf' : (file.split(/[\\/]/).at(-1) ?? file);
    const head = { name, currency: currency ?? usualTariff.currency, invented: false };
    return shelfFromCsv(text.value, head, facts.materials);
  }
  const json = jsonFrom(text.value, run.messages);
  const read = json.ok ? shelfFrom(json.value) : json;
  const strange = read.ok ? shelfMaterialFaults(read.value, facts.materials) : [];
  return strange.length > 0 ? bad(strange) : read;
}
