// Between which room temperatures was the home read? Colder and hotter than that it rests on a forecast.
import { channelAt, type ReadingLog } from '../reading-log.ts';

export interface RoomRead {
  readonly low: number;
  readonly high: number;
}

/** Share of the readings at each end that is left out, so that one odd reading covers no cold night; our choice. */
const leftOutFrac = 0.02;

/** @param log corrected by the instruments  @returns null when the room was not read */
export function roomReadOf(log: ReadingLog): RoomRead | null {
  const read = (channelAt(log, 'room', 'tempC')?.values ?? []).filter((v) => v !== null).sort((a, b) => a - b);
  if (read.length === 0) return null;
  const out = Math.floor(leftOutFrac * read.length);
  return { low: read[out]!, high: read[read.length - 1 - out]! };
}
