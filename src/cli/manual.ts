// The manual page of the terminal program in roff (section 1), from the tree of commands and the words of a language.
// Leaves out showing it: warmstead manual | man -l -
import type { KnownCommand, KnownOption } from './command-tree.ts';

export interface ManualWords {
  readonly name: string;
  readonly synopsis: string;
  readonly description: string;
  readonly commands: string;
  readonly exit: string;
  readonly environment: string;
  readonly files: string;
  readonly examples: string;
  readonly cautions: string;
  readonly about: string;
  readonly long: readonly string[];
  readonly exitRows: readonly (readonly [string, string])[];
  readonly environmentRows: readonly (readonly [string, string])[];
  readonly fileRows: readonly (readonly [string, string])[];
  readonly exampleRows: readonly (readonly [string, string])[];
  readonly cautionText: readonly string[];
  readonly seeAlso: string;
  readonly seeAlsoText: string;
}

/** A line that starts with a dot or a quote would be a request; a hyphen typed on a keyboard must stay one. */
const roff = (text: string): string =>
  text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replace(/^(?=[.'])/gm, '\\&');

/** Words that the sentence itself names are not said twice. */
const withWords = ({ text, words }: KnownOption): string =>
  words.every((word) => text.includes(word)) ? text : `${text} (${words.join(', ')})`;

const rows = (pairs: readonly (readonly [string, string])[]): string[] =>
  pairs.flatMap(([term, text]) => ['.TP', `.B ${roff(term)}`, roff(text)]);

/** The page of all commands, ready for man. */
export function manualPage(tree: readonly KnownCommand[], words: ManualWords, version: string): string {
  const section = (title: string): string => `.SH ${roff(title.toUpperCase())}`;
  const commands = tree.flatMap((command) => [
    '.SS',
    `${roff(`warmstead ${command.name} ${command.usage}`)}`,
    roff(command.text),
    ...command.options.flatMap((option) => [
      '.TP',
      `.B ${roff([option.flags.join(', '), option.value ?? ''].join(' ').trim())}`,
      roff(withWords(option)),
    ]),
  ]);
  return `${[
    `.TH WARMSTEAD 1 "" "warmstead ${version}" "Warmstead"`,
    section(words.name),
    `warmstead \\- ${roff(words.about)}`,
    section(words.synopsis),
    ...tree.flatMap((command) => [`.B warmstead ${roff(command.name)}`, roff(command.usage), '.br']),
    section(words.description),
    ...words.long.flatMap((text) => ['.PP', roff(text)]),
    section(words.commands),
    ...commands,
    section(words.exit),
    ...rows(words.exitRows),
    section(words.environment),
    ...rows(words.environmentRows),
    section(words.files),
    ...rows(words.fileRows),
    section(words.examples),
    ...words.exampleRows.flatMap(([line, text]) => ['.PP', roff(text), '.PP', '.nf', `.RS`, roff(line), '.RE', '.fi']),
    section(words.cautions),
    ...words.cautionText.flatMap((text) => ['.PP', roff(text)]),
    section(words.seeAlso),
    roff(words.seeAlsoText),
  ].join('\n')}\n`;
}
