// What every command is handed: the terminal, the words, the way numbers are shown, the facts.
import { join } from 'node:path';
import type { Facts } from '../husbandry/fact.ts';
import type { Enclosure } from '../physics/enclosure.ts';
import { enclosureFrom } from '../physics/validate-enclosure.ts';
import { loadFacts } from '../records/facts.ts';
import { programRoot } from '../records/root.ts';
import type { Fault } from '../shared/fault.ts';
import type { Language } from '../shared/languages.ts';
import type { Result } from '../shared/result.ts';
import { exitCodes } from './exit-codes.ts';
import { faultLines } from './faults-text.ts';
import { displayName, readJson } from './input.ts';
import type { Messages } from './messages/en.ts';
import type { Terminal } from './terminal.ts';

export interface RunContext {
  readonly terminal: Terminal;
  readonly messages: Messages;
  readonly language: Language;
}

export function writeLines(terminal: Terminal, lines: readonly string[]): void {
  terminal.out(`${lines.join('\n')}\n`);
}

/** Machine output: SI units and a point, whatever language or units were asked for. */
export function writeJson(terminal: Terminal, value: unknown): void {
  terminal.out(`${JSON.stringify(value, null, 2)}\n`);
}

/** Tells every fault: to people on standard error, to programs as JSON on standard output. */
export function refuse(faults: readonly Fault[], where: string, asJson: boolean, run: RunContext): number {
  if (asJson) writeJson(run.terminal, { ok: false, faults });
  else run.terminal.err(`${faultLines(faults, where, run).join('\n')}\n`);
  return exitCodes.badInput;
}

/** How a file is called in a sentence. */
export const fileLabel = (file: string, messages: Messages): string =>
  file === '-' ? messages.check.standardInput : displayName(file);

/** The facts of data/. One that is damaged is left out by the loader; a command that needs it says so by itself. */
export function factsOfProgram(): Facts {
  return loadFacts(join(programRoot(), 'data')).facts;
}

export async function readEnclosure(file: string, facts: Facts, run: RunContext): Promise<Result<Enclosure>> {
  const json = await readJson(file, run.terminal, run.messages);
  return json.ok ? enclosureFrom(json.value, facts.materials) : json;
}
