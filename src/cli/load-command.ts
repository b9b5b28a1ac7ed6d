// warmstead load-readings: readings of live sources from files, in bulk. Leaves out what a row may hold
// (desk/load-readings.ts).
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { systemClock } from '../desk/desk-context.ts';
import { loadReadings, type ReadingsFile } from '../desk/load-readings.ts';
import { restoreFaults } from '../records/restore-faults.ts';
import type { Language } from './display.ts';
import { exitCodes } from './exit-codes.ts';
import type { RawOptions } from './options.ts';
import { hasTable, refused, withRecords } from './records-commands.ts';
import { recordsMessages } from './records-messages.ts';
import { type RunContext, writeJson, writeLines } from './run-context.ts';

export async function loadCommand(
  files: readonly string[],
  raw: RawOptions,
  language: Language,
  run: RunContext,
): Promise<number> {
  return await withRecords(run.terminal.env, raw, run, language, async (pool) => {
    if (!(await hasTable(pool, 'live_reading'))) return refused([restoreFaults.none()], raw, run);
    const started = performance.now();
    const loaded = await loadReadings(pool, opened(files, run), systemClock.now(), raw.leaveOut === true);
    if (!loaded.ok) return refused(loaded.faults, raw, run);
    const perSecond = Math.round(loaded.value.rows / ((performance.now() - started) / 1000));
    const { rows, written, known, leftOut, faults } = loaded.value;
    const words = recordsMessages(language);
    if (raw.json === true) writeJson(run.terminal, { ok: true, ...loaded.value, perSecond });
    else {
      writeLines(run.terminal, [
        words.loaded(rows, written, known, perSecond),
        ...(leftOut > 0 ? [words.leftOut(leftOut)] : []),
        ...faults.map((one) => `  ${one.field}  ${one.got}  ${one.say} [${one.code}]`),
      ]);
    }
    return leftOut > 0 ? exitCodes.fails : exitCodes.holds;
  });
}

/** One after the other, "-" from standard input, "….gz" unpacked on the way. */
async function* opened(files: readonly string[], run: RunContext): AsyncIterable<ReadingsFile> {
  for (const name of files) {
    if (name === '-') yield { name, chunks: run.terminal.stdin };
    else {
      const bytes = createReadStream(name, { highWaterMark: 1 << 18 });
      yield { name, chunks: name.endsWith('.gz') ? unpacked(bytes) : bytes };
    }
  }
}

function unpacked(bytes: NodeJS.ReadableStream): AsyncIterable<Uint8Array> {
  const gunzip = createGunzip();
  bytes.on('error', (error) => gunzip.destroy(error));
  return bytes.pipe(gunzip);
}
