// Takes every figure of docs/speed.md in one run, says whether each limit is kept, and writes the page when asked to.
// Started by run.ts, which bundles it and keeps it on one core. Exit code 1: the C twin disagrees, so nothing was measured.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import type { SearchRow } from './search.ts';
import { columnTimes, steadyTimes, yearTimes } from './solver.ts';
import { speedPage } from './speed-page.ts';
import { besideTwin } from './twin.ts';

const [folder, page] = process.argv.slice(2);
if (!folder) throw new Error('usage: figures FOLDER [PAGE]');
const loadBefore = loadavg()[0]!;
const memoryMb = () => {
  const { rss, heapUsed, external } = process.memoryUsage();
  return { rss: rss / 1e6, heap: heapUsed / 1e6, external: external / 1e6 };
};

const twin = besideTwin(folder);
if (twin.twin && !(twin.differsK < 1e-6 && twin.differsBooks < 1e-6)) {
  console.error(`the C twin disagrees: ${twin.differsK} K, books ${twin.differsBooks}`);
  process.exit(1);
}
const afterDay = memoryMb();
const year = yearTimes();
const afterYear = memoryMb();
const steady = ['wood-1200', 'pvc-1200', 'glass-mesh-900', 'tub-mat-600'].map(steadyTimes);
const columns = [8, 16, 32, 64].map(columnTimes);
const afterColumns = memoryMb();
/** Taken before by processes of their own (run.ts). */
const searches = readdirSync(folder)
  .filter((name) => /^search-.*\.json$/.test(name))
  .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as SearchRow);
const text = speedPage({
  searches,
  twin,
  steady,
  columns,
  year,
  memory: { afterDay, afterYear, afterColumns },
  load: [loadBefore, loadavg()[0]!],
});
console.log(text);
if (page) writeFileSync(page, text);
