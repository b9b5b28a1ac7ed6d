// How are faults shown in a terminal: all of them, each with what came, what is allowed and what to do.
import type { Fault } from '../shared/fault.ts';
import type { Messages } from './messages/en.ts';
import type { Terminal } from './terminal.ts';
import { wrapped } from './wrap.ts';

/** @param where file name, "standard input" or "the command line" */
export function faultLines(faults: readonly Fault[], where: string, terminal: Terminal, messages: Messages): string[] {
  const { paint, columns } = terminal;
  const { check } = messages;
  const lines = [paint.bold(check.faults(faults.length, where))];
  for (const fault of faults) {
    const place = fault.field === '' ? '' : `${paint.bold(fault.field)}  `;
    lines.push('', `  ${place}${paint.dim(fault.code)}`);
    lines.push(...wrapped(fault.say, columns, '    '));
    lines.push(...wrapped(`${check.allowed}: ${fault.allowed}`, columns, '    ').map((line) => paint.dim(line)));
    lines.push(...wrapped(fault.fix, columns, '    -> '));
  }
  return lines;
}
