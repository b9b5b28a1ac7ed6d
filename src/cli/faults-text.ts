// How are faults shown in a terminal: all of them, each with what came, what is allowed and what to do.
import { figuresSaid } from '../proving/words/figures-said.ts';
import { faultSaid } from '../proving/words/say-fault.ts';
import type { Fault } from '../shared/fault.ts';
import type { Language } from '../shared/languages.ts';
import type { RunContext } from './run-context.ts';
import { wrapped } from './wrap.ts';

/** @param where file name, "standard input" or "the command line" */
export function faultLines(faults: readonly Fault[], where: string, run: RunContext): string[] {
  const { paint } = run.terminal;
  const lines = [paint.bold(run.messages.check.faults(faults.length, where))];
  for (const fault of faults) {
    const place = fault.field === '' ? '' : `${paint.bold(fault.field)}  `;
    lines.push('', `  ${place}${paint.dim(fault.code)}`, ...bodyLines(fault, run));
  }
  return lines;
}

function bodyLines(fault: Fault, { terminal, messages, language }: RunContext): string[] {
  const { paint, columns } = terminal;
  const { check } = messages;
  const allowed = (text: string) =>
    wrapped(`${check.allowed}: ${text}`, columns, '    ').map((line) => paint.dim(line));
  const other = faultSaid(fault.code, language);
  if (other === null)
    return [
      ...wrapped(fault.say, columns, '    '),
      ...allowed(fault.allowed),
      ...wrapped(fault.fix, columns, '    -> '),
    ];
  // Words of the English stay out: the sentence says the same.
  const got = figuresSaid(fault.got, language);
  const limits = figuresSaid(fault.allowed, language);
  return [
    ...(got === null ? [] : wrapped(`${check.given}: ${got}`, columns, '    ')),
    ...(limits === null ? [] : allowed(limits)),
    ...wrapped(other, columns, '    -> '),
  ];
}

/** A note of the model in one line of text. */
export const noteSaid = ({ code, say, fix }: Fault, language: Language): string =>
  faultSaid(code, language) ?? `${say} ${fix}`.trim();
