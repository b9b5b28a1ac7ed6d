// How far long work is, on one line that is written over itself, only where a person looks on.
// Leaves out: the work, and the words of what has been found so far.
import type { Terminal } from './terminal.ts';
import { padEnd, widthOf } from './wrap.ts';

export interface ProgressLine {
  /** Share done. */
  readonly done: (doneFrac: number) => void;
  /** One piece more of work whose end is not known. */
  readonly tick: () => void;
  /** What has been found so far; stays beside the share. */
  readonly found: (text: string) => void;
  /** Takes the line away. */
  readonly end: () => void;
}

/** Pieces of work for one dot; our choice. */
const ticksPerDot = 2;
const mostDots = 30;

export function progressLine({ err, isWatched, columns }: Terminal): ProgressLine {
  // a full line would wrap and could not be written over
  const width = columns - 1;
  let percent = '';
  let found = '';
  let ticks = 0;
  let shown = '';
  const show = (text: string): void => {
    if (!isWatched || text === shown) return;
    shown = text;
    const cut = widthOf(text) > width ? `${[...text].slice(0, width - 1).join('')}…` : text;
    err(`\r${padEnd(cut, width)}\r${cut}`);
  };
  const line = () => show([percent, found].filter((part) => part !== '').join('  '));
  return {
    done: (doneFrac) => {
      percent = `${Math.round(doneFrac * 100)} %`;
      line();
    },
    tick: () => {
      ticks++;
      percent = '.'.repeat((Math.floor(ticks / ticksPerDot) % mostDots) + 1);
      line();
    },
    found: (text) => {
      found = text;
      line();
    },
    end: () => {
      if (shown !== '') err(`\r${' '.repeat(width)}\r`);
      shown = '';
    },
  };
}
