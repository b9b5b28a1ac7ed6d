// The check module of all JSON tables: reads every table of the folders below and runs it.
import { readdirSync } from 'node:fs';
import type { CheckRow } from './check-row.ts';
import { airPathRunners } from './runners/air-paths.ts';
import { animalRunners } from './runners/animal.ts';
import { controlRunners } from './runners/control.ts';
import { convectionRunners } from './runners/convection.ts';
import { envelopeRunners } from './runners/envelope.ts';
import { moistureRunners } from './runners/moisture.ts';
import { radiationRunners } from './runners/radiation.ts';
import { soakingRunners } from './runners/soaking.ts';
import { readTables, rowsOf } from './table.ts';

const runners = {
  ...airPathRunners,
  ...animalRunners,
  ...controlRunners,
  ...convectionRunners,
  ...envelopeRunners,
  ...moistureRunners,
  ...radiationRunners,
  ...soakingRunners,
};

const folders = ['published', 'measured', 'two-methods', 'self-consistency', 'unit-agreement'];

export async function cases(): Promise<CheckRow[]> {
  return folders.flatMap((folder) => {
    const at = new URL(`./${folder}/`, import.meta.url);
    const files = readdirSync(at).filter((name) => name.endsWith('.table.json'));
    return files.sort().flatMap((name) => readTables(new URL(name, at)).flatMap((table) => rowsOf(table, runners)));
  });
}
