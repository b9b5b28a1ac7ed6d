// The words and options of the commands that keep the records.
import type { Command } from 'commander';
import type { Language } from './display.ts';
import type { RawOptions } from './options.ts';
import { recordsMessages } from './records-messages.ts';
import type { RunContext } from './run-context.ts';

type Doing = (action: () => Promise<number>, options: RawOptions) => Promise<void>;

export function addRecordsCommands(
  program: Command,
  prepared: (command: Command) => Command,
  doing: Doing,
  language: Language,
  run: RunContext,
): void {
  const { help } = recordsMessages(language);
  const commands = async () => await import('./records-commands.ts');
  const made = (name: string, about: string, examples: readonly string[], exit: string): Command =>
    prepared(program.command(name))
      .description(about)
      .option('--json', help.json)
      .option('--lang <LANG>', run.messages.help.lang)
      .addHelpText(
        'after',
        `\n${help.places}\n\n${run.messages.help.examples}\n  ${examples.join('\n  ')}\n\n${run.messages.help.exit}\n  ${exit}`,
      );
  made('verify-records', help.verify, help.examplesVerify, help.exitVerify)
    .option('--head <BRANCH:NUMBER:HASH>', help.head, (value: string, before: string[] = []) => [...before, value])
    .action(async (options: RawOptions) =>
      doing(async () => (await commands()).verifyCommand(options, language, run), options),
    );
  made('backup', help.backup, help.examplesBackup, help.exitOther)
    .argument('<FILE>', help.file)
    .action(async (file: string, options: RawOptions) =>
      doing(async () => (await commands()).backupCommand(file, options, language, run), options),
    );
  made('restore', help.restore, help.examplesRestore, help.exitOther)
    .argument('<FILE>', help.file)
    .action(async (file: string, options: RawOptions) =>
      doing(async () => (await commands()).restoreCommand(file, options, language, run), options),
    );
  made('move-records', help.move, help.examplesMove, help.exitOther).action(async (options: RawOptions) =>
    doing(async () => (await commands()).moveCommand(options, language, run), options),
  );
  made('load-readings', help.load, help.examplesLoad, help.exitLoad)
    .argument('<FILE...>', help.loadFiles)
    .option('--leave-out', help.leaveOut)
    .action(async (files: string[], options: RawOptions) =>
      doing(async () => (await import('./load-command.ts')).loadCommand(files, options, language, run), options),
    );
  made('owner-code', help.ownerCode, help.examplesOwner, help.exitOwner)
    .option('--name <NAME>', help.ownerName)
    .action(async (options: RawOptions) =>
      doing(async () => (await import('./owner-code-command.ts')).ownerCodeCommand(options, language, run), options),
    );
}
