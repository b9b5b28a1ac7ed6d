// warmstead shelf [FILE]: is this a sound shelf, and the same as a table or as JSON, without loss.
// Leaves out: choosing from it (plan-choose.ts) and the shelf of a branch, which the desk keeps.
import { shelfToCsv } from '../planning/shelf/shelf-csv.ts';
import { shelfKinds } from '../planning/shelf/shelf-fields.ts';
import { chooseWords } from './choose-words.ts';
import type { Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { OptionReader, type RawOptions } from './options.ts';
import { factsOfProgram, fileLabel, type RunContext, refuse, writeJson, writeLines } from './run-context.ts';
import { shelfOfFile } from './shelf-file.ts';

export async function shelfCommand(
  file: string | undefined,
  raw: RawOptions,
  language: Language,
  run: RunContext,
): Promise<number> {
  const options = new OptionReader(raw, run.messages);
  options.apart(['csv', 'json']);
  const asJson = options.flag('json');
  if (options.faults.length > 0) return refuse(options.faults, run.messages.check.commandLine, asJson, run);
  const words = chooseWords(language);
  const read = await shelfOfFile(file ?? null, options.text('currency'), factsOfProgram(), run);
  const label = file === undefined ? words.starter : fileLabel(file, run.messages);
  if (!read.ok) return refuse(read.faults, label, asJson, run);
  const shelf = read.value;
  if (options.flag('csv')) run.terminal.out(shelfToCsv(shelf));
  else if (asJson) writeJson(run.terminal, shelf);
  else {
    const counts = shelfKinds.map((kind) => [kind, shelf.items.filter((item) => item.kind === kind).length] as const);
    writeLines(run.terminal, [
      words.shelf(shelf.name, shelf.items.length, shelf.currency),
      ...counts.filter(([, n]) => n > 0).map(([kind, n]) => `  ${String(n).padStart(4)}  ${words.kinds[kind]}`),
      ...(shelf.invented ? [words.invented] : []),
    ]);
  }
  return exitCodes.holds;
}
