// What the program may do to a terminal: write, read standard input, know its width and whether colour is wanted.
// Leaves out: what is written. Tests hand in their own.
import { createColors } from 'picocolors';

export type Paint = ReturnType<typeof createColors>;

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Columns of text that fit side by side. */
  readonly columns: number;
  readonly colour: boolean;
  readonly paint: Paint;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly stdin: AsyncIterable<Uint8Array>;
  /** Somebody watches standard error: how far long work is may be written over itself there. */
  readonly isWatched?: boolean;
}

const narrowest = 48;
const usual = 80;
const widest = 160;

/** Colour when standard output is a terminal; NO_COLOR forbids and FORCE_COLOR demands it, whatever it is. */
export function wantsColour(env: Terminal['env'], isTerminal: boolean): boolean {
  if ((env.NO_COLOR ?? '') !== '') return false;
  const forced = env.FORCE_COLOR ?? '';
  if (forced !== '') return forced !== '0' && forced !== 'false';
  return isTerminal && env.TERM !== 'dumb';
}

/** The terminal that this process was started from. A reader that hangs up early (| head) ends it quietly. */
export function ownTerminal(): Terminal {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(process.exitCode ?? 0);
    });
  }
  const colour = wantsColour(process.env, process.stdout.isTTY === true);
  const columns = process.stdout.columns ?? (Number(process.env.COLUMNS) || usual);
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    columns: Math.max(narrowest, Math.min(widest, columns)),
    colour,
    paint: createColors(colour),
    env: process.env,
    stdin: process.stdin,
    isWatched: process.stderr.isTTY === true,
  };
}
