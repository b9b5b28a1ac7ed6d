// Which tests there are: "unit" needs nothing, "records" a real database, "e2e" also a real browser.
import { defineConfig } from 'vitest/config';
import { laterFlags } from './src/desk/compile-later.ts';

const database = [
  'src/records/**/*.test.ts',
  'src/desk/**/*.test.ts',
  'src/server/**/*.test.ts',
  'scripts/load/*.test.ts',
  'scripts/survive/*.test.ts',
];
/** Journeys that read every sheet of a full shop, once more for each language, size and state. They run apart from the others
 *  (`npm run test:sheets`), so that `npm test` stays short; WARMSTEAD_JOURNEYS says which are wanted, all of them unless said. */
const everySheet = [
  'every-sheet',
  'every-state',
  'by-keyboard',
  'german-desk',
  'third-language',
  'on-paper',
  'no-keys',
  'paper-units',
  'taken-back-home',
  'taken-back-shop',
].map((name) => `e2e/${name}.e2e.ts`);
const journeys = process.env.WARMSTEAD_JOURNEYS;
/** Each file has its own program, port and database, so that every core may have one. Of itself the runner leaves one free. */
const maxWorkers = '100%';
/** Simulating in a short life: the compiler takes less of it (measured on the heaviest files: 14 % less processor time). */
const execArgv = [...laterFlags];
const engine = ['./src/records/testing/engine-for-tests.ts'];

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          maxWorkers,
          execArgv,
          // One process for many files, warm from the second on: a fifth less processor time. None of them keeps a state that
          // another would see (the pure rooms can not); one that does belongs under "records".
          isolate: false,
          include: ['src/**/*.test.{ts,tsx}', 'checks/**/*.test.ts', 'scripts/**/*.test.ts', 'bench/**/*.test.ts'],
          exclude: database,
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'records',
          maxWorkers,
          execArgv,
          include: database,
          globalSetup: engine,
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'e2e',
          maxWorkers,
          execArgv,
          include: journeys === 'sheets' ? everySheet : ['e2e/**/*.e2e.ts'],
          exclude: journeys === 'work' ? everySheet : [],
          globalSetup: engine,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // What a person waits to see: a busy machine draws it later.
          expect: { poll: { timeout: 30_000 } },
        },
      },
    ],
  },
});
