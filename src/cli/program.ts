// Which commands and options there are, in the words of one language, and how a run ends.
// A command is loaded when it is asked for, so that --help and check start fast.
// Leaves out: what the commands do (plan-command.ts, simulate-command.ts, check-command.ts).
import { Command, CommanderError } from 'commander';
import { versions } from '../records/versions.ts';
import { type Language, languageCodes } from '../shared/languages.ts';
import { chooseWords } from './choose-words.ts';
import { exitCodes } from './exit-codes.ts';
import type { Messages } from './messages/en.ts';
import { messagesFor } from './messages/languages.ts';
import { type RangedOption, rangedText } from './option-ranges.ts';
import { languageOf, OptionReader, type RawOptions } from './options.ts';
import { addPackCommand } from './pack-register.ts';
import { addProofCommand } from './proof-register.ts';
import { addRecordsCommands } from './records-register.ts';
import { type RunContext, refuse } from './run-context.ts';
import { addShellCommands } from './shell-register.ts';
import type { Terminal } from './terminal.ts';

type Action = (file: string, options: RawOptions) => Promise<number>;

/** Runs one command line and returns the exit code; never throws and never prints a stack trace. */
export async function runProgram(argv: readonly string[], terminal: Terminal): Promise<number> {
  const language = languageOf(argv, terminal.env);
  const messages = messagesFor(language);
  const run: RunContext = { terminal, messages, language };
  let code: number = exitCodes.holds;
  const doing = (action: Action) => async (file: string, options: RawOptions) => {
    const asked = new OptionReader(options, messages);
    asked.word('lang', languageCodes(), language);
    code =
      asked.faults.length > 0
        ? refuse(asked.faults, messages.check.commandLine, false, run)
        : await action(file, options);
  };
  try {
    await programOf(run, language, doing).parseAsync([...argv], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return endOf(error, run);
    const reference = error instanceof Error ? error.name : typeof error;
    terminal.err(`${messages.faults.crash(reference)}\n`);
    if (terminal.env.WARMSTEAD_DEBUG && error instanceof Error) terminal.err(`${error.stack}\n`);
    return exitCodes.ourFault;
  }
}

/** Help and version end well; everything else that the parser refuses is bad input. */
function endOf(error: CommanderError, run: RunContext): number {
  if (error.exitCode === 0) return exitCodes.holds;
  if (error.code === 'commander.help') return exitCodes.badInput;
  const detail = error.message
    .replace(/^error: /, '')
    .replace(/\s+/g, ' ')
    .replace(/\p{Cc}/gu, '?')
    .slice(0, 300);
  const words = run.messages.faults.usage(detail);
  const fault = { code: 'CLI_USAGE', field: '', got: detail, allowed: 'warmstead --help', ...words };
  return refuse([fault], run.messages.check.commandLine, false, run);
}

function programOf(
  run: RunContext,
  language: Language,
  doing: (action: Action) => (f: string, o: RawOptions) => Promise<void>,
): Command {
  const { help } = run.messages;
  const choose = chooseWords(language).help;
  const program = prepared(new Command('warmstead'), run)
    .description(help.about)
    .version(versions().program, '-V, --version', help.version)
    .helpCommand(false)
    .addHelpText('after', `\n${help.more}`);
  const ranged = (text: string, name: RangedOption): string => rangedText(text, name, run.messages);
  const command = (name: string, description: string, examples: readonly string[], exit: string): Command =>
    prepared(program.command(name), run)
      .description(description)
      .argument('<FILE>', help.file)
      .option('--json', help.json)
      .addHelpText(
        'after',
        `\n${help.examples}\n${examples.map((e) => `  ${e}`).join('\n')}\n\n${help.exit}\n  ${exit}`,
      );

  common(command('plan', help.plan, help.examplesPlan, help.exitPlan), run)
    .option('--species <ID>', help.species)
    .option('--stage <STAGE>', help.stage)
    .option('--standard <ID>', help.standard)
    .option('--shop-values <FILE>', help.shopValues)
    .option('--members <N>', ranged(help.members, 'members'))
    .option('--seed <N>', ranged(help.seed, 'seed'))
    .option('--brief', help.brief)
    .option('--map <SEASON>', help.map)
    .option('--search', choose.search)
    .option('--faults', choose.faults)
    .option('--stages', choose.stages)
    .option('--shelf <FILE>', choose.shelf)
    .option('--tariff <PRICE>', ranged(choose.tariff, 'tariff'))
    .option('--years <N>', ranged(choose.years, 'years'))
    .option('--own', choose.own)
    .option('--has <IDS>', choose.has)
    .option('--currency <CODE>', choose.currency)
    .action(
      doing(async (file, options) => (await import('./plan-command.ts')).planCommand(file, options, language, run)),
    );
  common(command('simulate', help.simulate, help.examplesSimulate, help.exitOther), run)
    .option('--shop-values <FILE>', help.shopValues)
    .option('--csv', help.csv)
    .option('--steady', help.steady)
    .option('--room <TEMP>', ranged(help.room, 'room'))
    .option('--night', help.night)
    .option('--day <SEASON>', help.day)
    .option('--low <TEMP>', ranged(help.low, 'low'))
    .option('--high <TEMP>', ranged(help.high, 'high'))
    .option('--rh <PCT>', ranged(help.rh, 'rh'))
    .option('--sun <W/M2>', ranged(help.sun, 'sun'))
    .option('--watts <W,...>', ranged(help.watts, 'watts'))
    .action(
      doing(async (file, options) =>
        (await import('./simulate-command.ts')).simulateCommand(file, options, language, run),
      ),
    );
  command('check', help.check, help.examplesCheck, help.exitOther)
    .option('--lang <LANG>', help.lang)
    .action(doing(async (file, options) => (await import('./check-command.ts')).checkCommand(file, options, run)));
  prepared(program.command('shelf'), run)
    .description(choose.about)
    .argument('[FILE]', choose.file)
    .option('--csv', choose.csv)
    .option('--json', choose.json)
    .option('--currency <CODE>', choose.currency)
    .option('--lang <LANG>', help.lang)
    .addHelpText(
      'after',
      `\n${help.examples}\n${choose.examples.map((e) => `  ${e}`).join('\n')}\n\n${help.exit}\n  ${choose.exit}`,
    )
    .action(
      doing(async (file, options) => (await import('./shelf-command.ts')).shelfCommand(file, options, language, run)),
    );
  addPackCommand(
    program,
    (made) => prepared(made, run),
    (action, options) => doing(action)('', options),
    language,
    run,
  );
  addProofCommand(
    program,
    (made) => prepared(made, run),
    (action, options) => doing(action)('', options),
    language,
    run,
  );
  addRecordsCommands(
    program,
    (made) => prepared(made, run),
    (action, options) => doing(action)('', options),
    language,
    run,
  );
  addShellCommands(program, (made) => prepared(made, run), language, run);
  return program;
}

const common = (command: Command, { messages }: RunContext): Command =>
  command.option('--units <UNITS>', messages.help.units).option('--lang <LANG>', messages.help.lang);

function prepared(command: Command, { terminal, messages }: RunContext): Command {
  return command
    .exitOverride()
    .helpOption('-h, --help', messages.help.helpOption)
    .configureOutput({
      writeOut: terminal.out,
      writeErr: terminal.err,
      outputError: () => {},
      getOutHelpWidth: () => terminal.columns,
    })
    .configureHelp({ styleTitle: (title) => titleIn(title, messages) });
}

/** The parser's own headings in the language of the run. */
function titleIn(title: string, { help }: Messages): string {
  const own: Readonly<Record<string, string>> = {
    'Usage:': help.usage,
    'Arguments:': help.arguments,
    'Options:': help.options,
    'Commands:': help.commands,
  };
  return own[title] ?? title;
}
