// What was understood of a file, to be shown for one confirming tap: layout, order of dates, units, clock, what was
// left out and why, what looks odd, and what only a person can answer.

import type { Told } from '../../husbandry/coded.ts';
import type { LogPlace, Quantity, ReadingLog } from '../reading-log.ts';
import type { Delimiter } from './delimiter.ts';
import type { DateOrder } from './stamp.ts';
import type { EncodingLabel } from './text-encoding.ts';

/** A row that gave no reading, with the reason. */
export interface RejectedRow {
  /** 1 for the first line of the table. */
  readonly row: number;
  readonly reason: 'no-time' | 'no-number' | 'summary' | 'clock-reset' | 'empty';
  readonly text: string;
}

/** Something to know about the readings. count and hours are the figures behind the words. */
export interface LogFinding {
  readonly id:
    | 'gap'
    | 'clock-reset'
    | 'clock-back'
    | 'doubled-hour'
    | 'doubled-times'
    | 'reversed'
    | 'frozen'
    | 'no-variance'
    | 'impossible'
    | 'no-reading'
    | 'missing-rows'
    | 'channels-swapped'
    | 'looks-fahrenheit'
    | 'summary-rows';
  readonly say: string;
  /** The same without a language. */
  readonly told: Told;
  readonly channelId: string | null;
  readonly fromS: number | null;
  readonly toS: number | null;
  readonly count: number;
}

/** What a person must say before the readings count. */
export interface LogQuestion {
  readonly id: 'date-order' | 'unit' | 'place' | 'zone' | 'swapped';
  readonly channelId: string | null;
  readonly say: string;
  readonly choices: readonly string[];
  /** What was assumed for now. */
  readonly assumed: string | null;
}

export interface UnderstoodColumn {
  readonly heading: string;
  readonly subject: string;
  readonly channelId: string | null;
}

export interface UnderstoodLog {
  readonly log: ReadingLog;
  readonly encoding: EncodingLabel;
  readonly delimiter: Delimiter;
  readonly decimal: '.' | ',';
  readonly dateOrder: DateOrder | 'numbers';
  /** How the clock of the file was taken. */
  readonly clock: {
    readonly kind: 'wall' | 'utc';
    readonly offsetMin: number | null;
    readonly say: string;
    readonly told: Told;
  };
  readonly headingRow: number | null;
  readonly preambleRows: number;
  readonly columns: readonly UnderstoodColumn[];
  readonly rowsInFile: number;
  readonly rowsRead: number;
  readonly rejected: readonly RejectedRow[];
  readonly rejectedByReason: Readonly<Partial<Record<RejectedRow['reason'], number>>>;
  readonly intervalS: number;
  readonly findings: readonly LogFinding[];
  readonly questions: readonly LogQuestion[];
}

/** What a person has said about a file. */
export interface LogHints {
  readonly dateOrder?: DateOrder;
  readonly tempUnit?: 'C' | 'F';
  /** Minutes ahead of UTC of the home's clock, for files that keep UTC. */
  readonly homeOffsetMin?: number;
  /** Channel id or label -> place. */
  readonly places?: Readonly<Record<string, LogPlace>>;
  /** Channel id or label -> instrument. */
  readonly instruments?: Readonly<Record<string, string>>;
  /** No reading can be later [wall-clock s]. */
  readonly latestS?: number;
}

/** A channel while it is being read. */
export interface DraftChannel {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
  /** As the file has it, before any conversion. */
  readonly unit: 'C' | 'F' | 'unknown' | '%' | 'W';
  readonly values: (number | null)[];
}
