// What stands in a pack, part by part and line by line, and which lines two packs have not in common.
// Leaves out drawings, of which only the title is a line, and empty rows to write in.
import type { SaidPart } from '../../records/packs-given.ts';
import type { Block } from './blocks.ts';
import type { PackPaper } from './pack-pages.ts';

export function saidIn(paper: PackPaper): readonly SaidPart[] {
  const head = { title: paper.title, lines: [paper.lead, paper.footer] };
  return [head, ...paper.parts.map(({ title, blocks }) => ({ title, lines: blocks.flatMap(linesOf) }))];
}

function linesOf(block: Block): readonly string[] {
  if (block.kind === 'text') return [block.text];
  if (block.kind === 'facts') return block.rows.map(([label, value]) => `${label}: ${value}`);
  if (block.kind === 'list') return block.items.map(({ lead, text }) => `${lead} ${text}`.trim());
  if (block.kind === 'table') return block.rows.map((row) => row.join(' · '));
  if (block.kind === 'notice') return [block.title, ...block.lines, ...(block.bullets ?? [])];
  if (block.kind === 'drawing') return [block.drawn.title];
  if (block.kind === 'pair') return [block.left.title, block.right.title, block.note];
  if (block.kind === 'hand') return block.lines.map(({ label, value }) => `${label}: ${value}`);
  return block.kind === 'sources' ? [...block.items, block.note] : [];
}

export interface PartDifference {
  readonly title: string;
  /** Stood in the earlier paper only. */
  readonly was: readonly string[];
  /** Stands in the later paper only. */
  readonly now: readonly string[];
}

/** Parts that are not the same in both, with the lines that only one of them has. */
export function differencesBetween(was: readonly SaidPart[], now: readonly SaidPart[]): readonly PartDifference[] {
  const titles = [...new Set([...was, ...now].map(({ title }) => title))];
  const linesUnder = (said: readonly SaidPart[], title: string) =>
    said.filter((part) => part.title === title).flatMap(({ lines }) => lines);
  return titles.flatMap((title) => {
    const [before, after] = [linesUnder(was, title), linesUnder(now, title)];
    const one = { title, was: without(before, after), now: without(after, before) };
    return one.was.length + one.now.length > 0 ? [one] : [];
  });
}

/** The lines of one that the other has not, as often as they stand there too many. */
function without(lines: readonly string[], others: readonly string[]): readonly string[] {
  const left = [...others];
  return lines.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}
