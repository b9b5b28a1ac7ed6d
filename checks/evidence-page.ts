// Writes the evidence page: every outside value beside ours, grouped by what such a comparison can show.
import { type CheckKind, type CheckRow, checkKinds, type JudgedRow, type KnownDisagreement } from './check-row.ts';

export type SourceList = Readonly<
  Record<string, { readonly citation: string; readonly url?: string; readonly read: string }>
>;

const headings: Readonly<Record<CheckKind, readonly [string, string]>> = {
  published: [
    'Published values',
    'A printed result against our computation of the same thing. Shows that the formula is the published one and is evaluated rightly. Where the printed value is marked "memory" nobody has looked it up again, so it is weaker than it looks.',
  ],
  measured: [
    'Measurements',
    'A reading of a real thing against our prediction. The strongest kind, and the rarest: no published vivarium with watts, size, materials and a temperature map was found.',
  ],
  cross: [
    'Other programs',
    'Another program on the same input. Shows that two people coded the same physics; both can share a wrong assumption.',
  ],
  'two-methods': [
    'Two ways to one number',
    'A closed form against integration, simulation or ray casting. Shows that the mathematics is right, not that the physics applies.',
  ],
  'self-consistency': [
    'Sums and balances',
    'Shares that must add to one, heat that must not vanish, grids that must converge. Necessary, never sufficient.',
  ],
  'common-practice': ['Common practice', 'What the trade reports. No source; a sanity band only.'],
  'unit-agreement': [
    'Agreement of two codes (no evidence)',
    'The expected value is another evaluation of the same formula by this project. It guards against typing errors and says nothing about whether the formula is right. Not counted as evidence anywhere.',
  ],
};

/** A number as people read it: four or five telling digits. */
export function shown(value: CheckRow['expected']): string {
  if (typeof value !== 'number') return `${shown(value.low)} to ${shown(value.high)}`;
  if (!Number.isFinite(value)) return String(value);
  if (value === 0) return '0';
  const size = Math.abs(value);
  return size >= 1e6 || size < 1e-4 ? value.toExponential(3) : String(Number(value.toPrecision(5)));
}

/** A measured fact that is kept for later and not compared by any module yet. */
export interface HeldFact {
  readonly id: string;
  readonly source: string;
  readonly title: string;
  readonly found: Readonly<Record<string, unknown>>;
  readonly note?: string;
  /** Why no module compares it; a fact that is compared has none. */
  readonly whyNot?: string;
}

/** The whole page as Markdown. @param rows judged rows of every module @param facts measured facts; those with a judged row are left out
 *  @param endured lines on what the records endured */
export function evidencePage(
  rows: readonly JudgedRow[],
  sources: SourceList,
  known: readonly KnownDisagreement[],
  facts: readonly HeldFact[] = [],
  endured: readonly string[] = [],
): string {
  const groups = checkKinds.map((kind) => ({ kind, rows: rows.filter((row) => row.kind === kind) }));
  return [
    '# Evidence',
    '',
    'Written by `npm run check`; do not edit. Every value that comes from outside our own code beside ours. A disagreement stays on this page until it is understood, and a limit is never widened to make it go away.',
    '',
    ...countTable(groups),
    '',
    ...knownList(rows, known),
    ...groups.flatMap((group) => section(group.kind, group.rows)),
    ...heldList(facts.filter((fact) => !rows.some((row) => row.id === fact.id))),
    ...endured,
    '## Sources',
    '',
    ...sourceList([...rows, ...facts], sources),
    '',
  ].join('\n');
}

const casesOf = (rows: readonly JudgedRow[]) => new Set(rows.map((row) => row.id)).size;

function countTable(groups: readonly { kind: CheckKind; rows: readonly JudgedRow[] }[]): string[] {
  const line = (name: string, rows: readonly JudgedRow[]) => {
    const of = (verdict: JudgedRow['verdict']) => rows.filter((row) => row.verdict === verdict).length;
    const memory = rows.filter((row) => row.provenance === 'memory').length;
    return `| ${name} | ${casesOf(rows)} | ${rows.length} | ${memory} | ${of('agrees')} | ${of('known disagreement')} | ${of('disagrees')} |`;
  };
  return [
    '| kind | cases | values | of them from memory | agree | known disagreement | disagree |',
    '|---|---|---|---|---|---|---|',
    ...groups.filter((group) => group.rows.length > 0).map((group) => line(headings[group.kind][0], group.rows)),
  ];
}

function knownList(rows: readonly JudgedRow[], known: readonly KnownDisagreement[]): string[] {
  if (known.length === 0) return [];
  const entry = (one: KnownDisagreement) => {
    const row = rows.find((each) => each.id === one.id && each.quantity === one.quantity);
    return `- **${one.id}, ${one.quantity}**${row ? `: expected ${shown(row.expected)}, ours ${shown(row.ours)} ${row.unit}` : ''}. ${one.reason}`;
  };
  return ['## Known disagreements', '', ...known.map(entry), ''];
}

function section(kind: CheckKind, rows: readonly JudgedRow[]): string[] {
  if (rows.length === 0) return [];
  const line = (row: JudgedRow) =>
    `| ${row.id} | ${row.title} | ${row.quantity} | ${row.source}${row.provenance === 'memory' ? ' (memory)' : ''} | ${shown(row.expected)} | ${shown(row.ours)} | ${shown(row.limits.low)} to ${shown(row.limits.high)} | ${row.unit} | ${row.verdict} |`;
  return [
    `## ${headings[kind][0]}`,
    '',
    headings[kind][1],
    '',
    '| id | case | quantity | source | expected | ours | limits | unit | verdict |',
    '|---|---|---|---|---|---|---|---|---|',
    ...rows.map(line),
    '',
    ...reasons(rows),
    '',
  ];
}

function reasons(rows: readonly JudgedRow[]): string[] {
  const byWhy = new Map<string, Set<string>>();
  for (const row of rows) byWhy.set(row.why, (byWhy.get(row.why) ?? new Set()).add(row.id));
  return [
    'Why these limits:',
    '',
    ...[...byWhy].map(([why, ids]) => `- ${[...ids].slice(0, 12).join(', ')}${ids.size > 12 ? ', …' : ''}: ${why}`),
  ];
}

function heldList(facts: readonly HeldFact[]): string[] {
  if (facts.length === 0) return [];
  return [
    '## Measured facts held, not compared',
    '',
    'Readings that no check compares with the program, each with the reason. They are not counted above.',
    '',
    ...facts.map(
      (fact) =>
        `- ${fact.id}: ${fact.title}: ${JSON.stringify(fact.found)} (${fact.source})${fact.note ? ` ${fact.note}` : ''} **Not compared:** ${fact.whyNot ?? 'no reason given'}`,
    ),
    '',
  ];
}

function sourceList(rows: readonly { readonly source: string }[], sources: SourceList): string[] {
  const used = [...new Set(rows.map((row) => row.source))].sort();
  return used.map((key) => {
    const source = sources[key];
    return source
      ? `- **${key}**: ${source.citation}${source.url ? ` <${source.url}>` : ''} (${source.read})`
      : `- **${key}**: missing`;
  });
}
