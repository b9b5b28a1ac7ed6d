// What the records endured on purpose (`npm run survive`) and under load (`npm run load`): the pages and tables that are
// made from the figures of the last written runs. Leaves out running them.

export interface SurvivalRun {
  readonly program: string;
  readonly node: string;
  readonly cores: number;
  readonly machineLoad: number;
  /** Of each kind on each engine. */
  readonly kills: number;
  readonly fuzz: number;
  readonly rows: readonly {
    readonly what: string;
    readonly found: string;
    /** Null: not run here. */
    readonly held: boolean | null;
  }[];
}

const heldWord = (held: boolean | null): string => (held === null ? 'not known' : held ? 'held' : '**did not hold**');

function survivalTable({ rows }: SurvivalRun): string {
  const lines = rows.map(({ what, found, held }) => `| ${what} | ${found} | ${heldWord(held)} |`);
  return ['| What was done | What was counted | Held |', '|---|---|---|', ...lines].join('\n');
}

export const survivalPage = (run: SurvivalRun): string => `# What it survives

Written by \`npm run survive -- --write\`. The program and its database were ended, filled and fed with nonsense on purpose;
each row says what was done, what was counted, and whether it held. Program ${run.program}, Node.js ${run.node},
${run.cores} cores (load of the machine ${run.machineLoad}), chance from one fixed start. A few of each kind run with every
\`npm test\` (\`scripts/survive/survive.test.ts\`).

${survivalTable(run)}

Several programs behind one database, one of them killed while it hears the broker: \`e2e/several-processes.e2e.ts\`. A real
power cut (a disk that loses what it said it had written) was not tried: both databases run with their usual fsync, and
\`kill -9\` does not show what a disk does.
`;

export interface LoadRun {
  readonly node: string;
  readonly cores: number;
  readonly machineLoad: number;
  readonly desks: number;
  readonly placements: number;
  readonly readings: number;
  readonly ingestPerSecond: number;
  readonly commitsPerSecond: number;
  readonly rows: readonly {
    readonly size: number;
    readonly name: string;
    readonly count: number;
    readonly failed: number;
    readonly p50Ms: number;
    readonly p95Ms: number;
    readonly p99Ms: number;
  }[];
}

/** Lines of the evidence page. */
export function enduredSection(survival: SurvivalRun | null, load: LoadRun | null): string[] {
  const lines: string[] = [];
  if (survival !== null) {
    const { kills, fuzz, cores, machineLoad } = survival;
    lines.push(
      `The last full run of \`npm run survive\`: ${kills} kills of each kind on each engine, ${fuzz} requests and ${fuzz} files of nonsense, ${cores} cores, load of the machine ${machineLoad}. No outside value: what was acknowledged is counted again.`,
      '',
      survivalTable(survival),
      '',
    );
  }
  if (load !== null) lines.push(...loadLines(load), '');
  return lines.length === 0 ? [] : ['## What the records endured', '', ...lines];
}

function loadLines(load: LoadRun): string[] {
  const largest = Math.max(...load.rows.map((row) => row.size));
  const shown = load.rows.filter((row) => row.size === largest || row.size === 1);
  return [
    `The last written run of \`npm run load\` ([all sizes](load.md)): ${load.placements} placements, ${load.readings} readings, ${load.desks} desks, ${load.cores} cores, load of the machine ${load.machineLoad}. Readings in bulk ${load.ingestPerSecond} a second; ${load.commitsPerSecond} linked rows a second of one branch.`,
    '',
    '| Size | What | Asked | Failed | p50 ms | p95 ms | p99 ms |',
    '|---|---|---|---|---|---|---|',
    ...shown.map(({ size, name, count, failed, p50Ms, p95Ms, p99Ms }) => {
      const times = [p50Ms, p95Ms, p99Ms].map((ms) => ms.toFixed(0)).join(' | ');
      return `| ${size}× | ${name} | ${count} | ${failed} | ${times} |`;
    }),
  ];
}
