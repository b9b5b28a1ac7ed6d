// What a check of the records says to a person. Leaves out the checking.
import type { Restored } from '../records/restore.ts';
import type { ChainBreak, ChainReport } from '../records/verify-chain.ts';
import type { recordsMessages } from './records-messages.ts';
import type { Terminal } from './terminal.ts';

type Words = ReturnType<typeof recordsMessages>;

export function verifyLines(report: ChainReport, words: Words, terminal: Terminal): string[] {
  const { paint } = terminal;
  const rows = Object.values(report.rows).reduce((sum, n) => sum + n, 0);
  const [first, ...others] = report.breaks;
  const lines =
    first === undefined
      ? [paint.bold(words.sound(report.links, rows))]
      : [paint.bold(words.broken(report.breaks.length)), ...breakLines(first, words)];
  if (others.length > 0) lines.push('', words.others);
  for (const one of others.slice(0, 19)) lines.push(...breakLines(one, words));
  if (report.erased.length > 0) lines.push('', words.erased(report.erased.length));
  for (const one of report.erased) lines.push(`  ${words.place(one.table, one.row, one.number)}  ${one.by}`);
  lines.push('', words.heads);
  for (const head of report.heads) lines.push(`  ${head.branchId}:${head.number}:${head.sha256}`);
  return lines;
}

function breakLines(one: ChainBreak, words: Words): string[] {
  const written = one.at === '' && one.by === '' ? [] : [`    ${words.written(one.at, one.by)}`];
  const branch = one.branchId === '' ? [] : [`    ${words.branch} ${one.branchId}`];
  return [`  ${words.place(one.table, one.row, one.number)}`, `    ${words.kinds[one.kind]}`, ...written, ...branch];
}

export function restoredLines(restored: Restored, words: Words, terminal: Terminal): string[] {
  const raised = restored.newSteps.length === 0 ? [] : [words.raised(restored.newSteps.length)];
  return [...raised, ...verifyLines(restored.chain, words, terminal)];
}
