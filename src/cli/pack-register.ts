// The words and options of `warmstead pack`, kept apart from the other commands.
import type { Command } from 'commander';
import type { Language } from './display.ts';
import type { RawOptions } from './options.ts';
import { packMessages } from './pack-messages.ts';
import type { RunContext } from './run-context.ts';

/** Adds the command; `prepared` gives it the program's own way of failing. */
export function addPackCommand(
  program: Command,
  prepared: (command: Command) => Command,
  doing: (action: () => Promise<number>, options: RawOptions) => Promise<void>,
  language: Language,
  run: RunContext,
): void {
  const words = packMessages(language);
  const { help } = run.messages;
  prepared(program.command('pack'))
    .description(words.pack)
    .argument('<FILE>', help.file)
    .requiredOption('--out <FILE>', words.out)
    .option('--place <PLACE>', words.place)
    .option('--units <UNITS>', help.units)
    .option('--lang <LANG>', help.lang)
    .addHelpText('after', `\n${help.examples}\n  ${words.examples.join('\n  ')}\n\n${help.exit}\n  ${words.exit}`)
    .action(async (file: string, options: RawOptions) => {
      await doing(async () => (await import('./pack-command.ts')).packCommand(file, options, language, run), options);
    });
}
