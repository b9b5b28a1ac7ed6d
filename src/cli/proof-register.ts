// The words and options of `warmstead proof`, kept apart from the other commands.
import type { Command } from 'commander';
import type { Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import { type RangedOption, rangedText } from './option-ranges.ts';
import type { RawOptions } from './options.ts';
import { proofMessages } from './proof-messages.ts';
import type { RunContext } from './run-context.ts';

/** Adds the command; `prepared` gives it the program's own way of failing. */
export function addProofCommand(
  program: Command,
  prepared: (command: Command) => Command,
  doing: (action: () => Promise<number>, options: RawOptions) => Promise<void>,
  language: Language,
  run: RunContext,
): void {
  const { help } = proofMessages(language);
  const ranged = (text: string, name: RangedOption): string => rangedText(text, name, run.messages);
  prepared(program.command('proof'))
    .description(help.proof)
    .argument('<FILE...>', help.files)
    .requiredOption('--enclosure <FILE>', help.enclosure)
    .option('--place <LABEL=PLACE>', help.place, collect)
    .option('--check <LABEL=SHOWN>', ranged(help.check, 'check'), collect)
    .option('--dates <ORDER>', help.dates)
    .option('--temp-unit <UNIT>', help.tempUnit)
    .option('--clock <HOURS>', ranged(help.clock, 'clock'))
    .option('--nights <N>', ranged(help.nights, 'nights'))
    .option('--shop-values <FILE>', run.messages.help.shopValues)
    .option('--humidity', help.humidity)
    .option('--json', run.messages.help.json)
    .option('--units <UNITS>', run.messages.help.units)
    .option('--lang <LANG>', run.messages.help.lang)
    .addHelpText(
      'after',
      `\n${run.messages.help.examples}\n  ${help.examples.join('\n  ')}\n\n${run.messages.help.exit}\n  ${help.exit}`,
    )
    .action(async (files: string[], options: RawOptions) => {
      await doing(
        async () => (await import('./proof-command.ts')).proofCommand(files, options, language, run),
        options,
      );
    });
}

const collect = (value: string, before: string[] = []): string[] => [...before, value];

/** What the shell is told. */
export const proofExit = {
  proven: exitCodes.holds,
  failed: exitCodes.fails,
  'not-proven': exitCodes.notKnown,
} as const;
