// What does a shell need to finish a half-typed command? Scripts for bash, zsh and fish, from the tree of commands.
import type { KnownCommand, KnownOption } from './command-tree.ts';
import { helpFlags } from './command-tree.ts';

export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

export function completionScript(shell: Shell, tree: readonly KnownCommand[]): string {
  const writers: Readonly<Record<Shell, (tree: readonly KnownCommand[]) => string>> = { bash, zsh, fish };
  return writers[shell](tree);
}

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;
const flagsOf = (command: KnownCommand): readonly string[] => [
  ...command.options.flatMap((option) => option.flags),
  ...helpFlags,
];

function bash(tree: readonly KnownCommand[]): string {
  const cases = tree.map((command) => {
    const values = command.options.filter((option) => option.value !== null).map((option) => bashValue(option));
    return [
      `    ${command.name})`,
      '      case "$before" in',
      ...values,
      '      esac',
      `      if [[ $here == -* ]]; then COMPREPLY=($(compgen -W ${quoted(flagsOf(command).join(' '))} -- "$here")); return; fi`,
      command.takesFile ? '      COMPREPLY=($(compgen -f -- "$here"))' : '      COMPREPLY=()',
      '      ;;',
    ].join('\n');
  });
  return `# Completion of warmstead for bash:  source <(warmstead completion bash)
_warmstead() {
  local here=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W ${quoted([...tree.map((c) => c.name), ...helpFlags, '--version'].join(' '))} -- "$here"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
  esac
}
complete -o filenames -F _warmstead warmstead
`;
}

function bashValue(option: KnownOption): string {
  const found = option.takesFile ? '-f' : option.words.length > 0 ? `-W ${quoted(option.words.join(' '))}` : `-W ''`;
  return `        ${option.flags.join('|')}) COMPREPLY=($(compgen ${found} -- "$here")); return ;;`;
}

/** zsh gives brackets, colons and backslashes of a description a meaning of their own. */
const zshText = (text: string): string => text.replace(/[[\]:\\]/g, '\\$&');

function zsh(tree: readonly KnownCommand[]): string {
  const names = tree.map((command) => quoted(`${command.name}:${zshText(command.text)}`)).join(' ');
  const cases = tree.map((command) => {
    const options = command.options.flatMap((option) => option.flags.map((flag) => zshOption(flag, option)));
    const rest = command.takesFile ? [quoted('*:file:_files')] : [];
    return `    ${command.name}) _arguments ${[...options, quoted('(-h --help)'.concat('--help[help]')), ...rest].join(' ')} ;;`;
  });
  return `#compdef warmstead
# Completion of warmstead for zsh:  source <(warmstead completion zsh)
_warmstead() {
  local -a names
  names=(${names})
  if ((CURRENT == 2)); then _describe command names; return; fi
  local command=\${words[2]}
  shift words
  ((CURRENT--))
  case $command in
${cases.join('\n')}
  esac
}
compdef _warmstead warmstead
`;
}

function zshOption(flag: string, option: KnownOption): string {
  const text = `${flag}[${zshText(option.text)}]`;
  if (option.value === null) return quoted(text);
  const after = option.takesFile ? '_files' : option.words.length > 0 ? `(${option.words.join(' ')})` : '';
  return quoted(`${text}:${zshText(option.value.replace(/[<>]/g, ''))}:${after}`);
}

const fishText = (text: string): string => `'${text.replace(/[\\']/g, '\\$&')}'`;

function fish(tree: readonly KnownCommand[]): string {
  const lines = ['# Completion of warmstead for fish:  warmstead completion fish | source'];
  lines.push('complete -c warmstead -f');
  for (const command of tree) {
    lines.push(`complete -c warmstead -n __fish_use_subcommand -a ${command.name} -d ${fishText(command.text)}`);
    const inside = `-n '__fish_seen_subcommand_from ${command.name}'`;
    if (command.takesFile) lines.push(`complete -c warmstead ${inside} -F`);
    for (const option of command.options) lines.push(`complete -c warmstead ${inside} ${fishOption(option)}`);
  }
  return `${lines.join('\n')}\n`;
}

function fishOption(option: KnownOption): string {
  const flags = option.flags.map((flag) => (flag.startsWith('--') ? `-l ${flag.slice(2)}` : `-s ${flag.slice(1)}`));
  const value = option.value === null ? [] : option.takesFile ? ['-r', '-F'] : ['-x'];
  const words = option.words.length > 0 ? ['-a', fishText(option.words.join(' '))] : [];
  return [...flags, ...value, ...words, '-d', fishText(option.text)].join(' ');
}
