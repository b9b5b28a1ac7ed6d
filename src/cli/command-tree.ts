// Which commands, options and words does the terminal program know? Read off the parser itself, so that completion and
// manual never tell of a command that is not there. Leaves out how they are written (completion.ts, manual.ts).
import type { Command } from 'commander';

export interface KnownOption {
  /** As typed, e.g. "--lang"; short forms too. */
  readonly flags: readonly string[];
  /** Shown after it, e.g. "<LANG>"; null for a switch. */
  readonly value: string | null;
  readonly text: string;
  /** Words that can follow; empty when anything can. */
  readonly words: readonly string[];
  readonly takesFile: boolean;
}

export interface KnownCommand {
  readonly name: string;
  readonly text: string;
  /** As in the usage line, e.g. "[options] <FILE>". */
  readonly usage: string;
  readonly takesFile: boolean;
  readonly options: readonly KnownOption[];
}

/** Words of options that have a fixed choice, by the option's long name, or by command and name: "pack place". */
export type OptionWords = Readonly<Record<string, readonly string[]>>;

export function commandTree(program: Command, words: OptionWords): readonly KnownCommand[] {
  return program.commands.map((command) => ({
    name: command.name(),
    text: command.description(),
    usage: command.usage(),
    takesFile: command.registeredArguments.some((argument) => /FILE/.test(argument.name())),
    options: command.options.map((option) => ({
      flags: [option.short, option.long].filter((flag): flag is string => typeof flag === 'string'),
      value: /[<[].*$/.exec(option.flags)?.[0] ?? null,
      text: option.description,
      words: words[`${command.name()} ${option.name()}`] ?? words[option.name()] ?? [],
      takesFile: /FILE|FOLDER/.test(option.flags),
    })),
  }));
}

/** The option of every command that the parser adds by itself. */
export const helpFlags = ['-h', '--help'] as const;
