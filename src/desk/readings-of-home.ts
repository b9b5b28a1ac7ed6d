// Everything that was read in one home, as one log: logger files, live sources, and what was typed by hand.
// Hand readings alone are judged by the rule for hands; beside a logger they stand in it as further channels.

import type { LogQuestion } from '../proving/files/understood.ts';
import { handLog } from '../proving/hand-readings.ts';
import { mergeLogs } from '../proving/merge-logs.ts';
import type { ReadingLog } from '../proving/reading-log.ts';
import { handReadingsOf } from '../records/hand-readings.ts';
import { type LiveSource, liveReadingsOf, liveSourcesOf } from '../records/live-sources.ts';
import { readingFilesOf } from '../records/readings.ts';
import { wallSecondsOf } from '../records/wall-clock.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { readingFaults } from './reading-faults.ts';
import { understoodFile } from './take-reading-file.ts';

export interface HomeReadings {
  readonly log: ReadingLog;
  readonly questions: readonly LogQuestion[];
  readonly inputs: { readonly files: readonly string[]; readonly handReadings: number; readonly liveReadings: number };
}

/** Live readings older than this are no part of a proof [days]; our choice. */
const liveDays = 21;

/** Faults: those of the files, "PROOF_NOTHING_READ". */
export async function readingsOfHome(desk: DeskContext, enquiryId: string): Promise<Result<HomeReadings>> {
  const logs: ReadingLog[] = [];
  const questions: LogQuestion[] = [];
  const files = await readingFilesOf(desk.db, enquiryId);
  for (const row of files) {
    const read = await understoodFile(desk, enquiryId, row);
    if (!read.ok) return read;
    logs.push(read.value.understood.log);
    questions.push(...read.value.understood.questions);
  }
  const live = await liveLog(desk, enquiryId);
  if (live !== null) logs.push(live);
  const typed = await handReadingsOf(desk.db, enquiryId);
  if (typed.length > 0) {
    const log = handLog(typed);
    if (!log.ok) return log;
    logs.push(log.value);
  }
  if (logs.length === 0) return bad([readingFaults.nothingRead]);
  const liveReadings =
    live === null ? 0 : live.channels.reduce((s, c) => s + c.values.filter((v) => v !== null).length, 0);
  return good({
    log: mergeLogs(logs),
    questions,
    inputs: { files: files.map((f) => f.sha256), handReadings: typed.length, liveReadings },
  });
}

/** One log of all live sources, on a time line of the closest interval; null when none has spoken. */
async function liveLog(desk: DeskContext, enquiryId: string): Promise<ReadingLog | null> {
  const sources = await liveSourcesOf(desk.db, enquiryId);
  const from = new Date(desk.clock.now().getTime() - liveDays * 86_400_000);
  const said = await Promise.all(
    sources.map(async (source) => ({ source, readings: await liveReadingsOf(desk.db, source.id, from) })),
  );
  const heard = said.filter((s) => s.readings.length > 0);
  if (heard.length === 0) return null;
  const stepS = Math.max(60, Math.min(300, ...heard.map((s) => s.source.intervalS)));
  const slots = new Set<number>();
  const byChannel = heard.map(({ source, readings }) => {
    const sums = new Map<number, { sum: number; n: number }>();
    for (const r of readings) {
      const slot = Math.round(wallSecondsOf(r.measuredAt) / stepS) * stepS;
      slots.add(slot);
      const s = sums.get(slot) ?? { sum: 0, n: 0 };
      s.sum += r.value;
      s.n++;
      sums.set(slot, s);
    }
    return { source, sums };
  });
  const timesS = [...slots].sort((a, b) => a - b);
  const channels = byChannel.map(({ source, sums }) => ({
    ...channelOf(source),
    values: timesS.map((t) => mean(sums.get(t))),
  }));
  return { kind: 'logger', timesS, channels };
}

const mean = (s: { sum: number; n: number } | undefined): number | null => (s === undefined ? null : s.sum / s.n);

const channelOf = (s: LiveSource) => ({
  id: s.id,
  label: s.label,
  quantity: s.quantity,
  place: s.place,
  instrumentId: s.instrumentId,
});
