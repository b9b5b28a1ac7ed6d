// Several loggers in one home: their channels side by side on one time line. Each keeps its own times; where a logger
// has no reading the value is empty. Ids stay apart by the number of the file.
import type { Channel, ReadingLog } from './reading-log.ts';

/** One log out of several; the only one when there is one. */
export function mergeLogs(logs: readonly ReadingLog[]): ReadingLog {
  if (logs.length === 1) return logs[0]!;
  const timesS = [...new Set(logs.flatMap((l) => l.timesS))].sort((a, b) => a - b);
  const at = new Map(timesS.map((t, i) => [t, i]));
  const channels = logs.flatMap((log, n) =>
    log.channels.map((c): Channel => {
      const values = timesS.map((): number | null => null);
      log.timesS.forEach((t, i) => {
        values[at.get(t)!] = c.values[i] ?? null;
      });
      const id = `f${n + 1}.${c.id}`;
      return log.kind === 'hand' ? { ...c, id, byHand: true, values } : { ...c, id, values };
    }),
  );
  return { kind: logs.every((l) => l.kind === 'hand') ? 'hand' : 'logger', timesS, channels };
}
