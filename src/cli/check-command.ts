// warmstead check FILE: is the file a sound enclosure? Leaves out: whether the home is any good.
import { exitCodes } from './exit-codes.ts';
import { OptionReader, type RawOptions } from './options.ts';
import {
  factsOfProgram,
  fileLabel,
  type RunContext,
  readEnclosure,
  refuse,
  writeJson,
  writeLines,
} from './run-context.ts';

export async function checkCommand(file: string, raw: RawOptions, run: RunContext): Promise<number> {
  const options = new OptionReader(raw, run.messages);
  const asJson = options.flag('json');
  const enclosure = await readEnclosure(file, factsOfProgram(), run);
  const label = fileLabel(file, run.messages);
  if (!enclosure.ok) return refuse(enclosure.faults, label, asJson, run);
  if (asJson) writeJson(run.terminal, { ok: true, faults: [] });
  else writeLines(run.terminal, [run.messages.check.sound(label)]);
  return exitCodes.holds;
}
