// The commands that help the shell: completion and the manual page.
import { Argument, type Command } from 'commander';
import { places } from '../husbandry/law-rule.ts';
import { dataFile, dataFolder } from '../records/data-files.ts';
import { versions } from '../records/versions.ts';
import { languageCodes } from '../shared/languages.ts';
import { commandTree, type OptionWords } from './command-tree.ts';
import { completionScript, type Shell, shells } from './completion.ts';
import type { Language } from './display.ts';
import { manualPage } from './manual.ts';
import { shellWords } from './messages/manual-words.ts';
import { unitSystems } from './options.ts';
import type { RunContext } from './run-context.ts';

/** Words that may follow an option with a fixed choice. */
function optionWords(): OptionWords {
  return {
    lang: languageCodes(),
    units: unitSystems,
    map: ['winter', 'summer', 'both', 'none'],
    day: ['winter', 'summer'],
    stage: ['hatchling', 'young', 'adult'],
    species: Object.keys(dataFolder('species')),
    standard: [...(dataFile('standards.json') as readonly { id: string }[]).map((one) => one.id), 'none'],
    dates: ['dmy', 'mdy', 'ymd'],
    'temp-unit': ['C', 'F'],
    'pack place': places,
  };
}

export function addShellCommands(
  program: Command,
  prepared: (command: Command) => Command,
  language: Language,
  run: RunContext,
): void {
  const words = shellWords(language);
  const { help } = run.messages;
  const examples = (lines: readonly string[]) =>
    `\n${help.examples}\n  ${lines.join('\n  ')}\n\n${help.exit}\n  ${words.shellExit}`;
  prepared(program.command('completion'))
    .description(words.completionHelp)
    .addArgument(new Argument('<SHELL>', words.shellArgument).choices(shells))
    .addHelpText('after', examples(words.completionExamples))
    .action((shell: Shell) => run.terminal.out(completionScript(shell, commandTree(program, optionWords()))));
  prepared(program.command('manual'))
    .description(words.manualHelp)
    .option('--lang <LANG>', help.lang)
    .addHelpText('after', examples(words.manualExamples))
    .action(() => run.terminal.out(manualPage(commandTree(program, optionWords()), words, versions().program)));
}
