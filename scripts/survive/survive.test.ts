// A little of every trial with each run of the tests, so that a break of what must hold is noticed at once. The figures that
// count come from the full run (npm run survive, docs/survival.md).
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { systemPrograms } from '../../src/records/testing/servers.ts';
import { appForTrials, type TrialApp } from './app.ts';
import { databaseAway } from './away.ts';
import { chanceFrom } from './chance.ts';
import { jumpClock } from './clock.ts';
import { twoEditors } from './editors.ts';
import { builtIn, ownServer, type Trial } from './engines.ts';
import { fuzzFiles, fuzzRequests } from './fuzz.ts';
import { killDatabase, killPrograms } from './kills.ts';

const seed = 20_260_115;
const engines = [
  { name: 'built-in', make: async () => await builtIn(), here: true },
  { name: "a server of the system (needs Debian's postgresql)", make: ownServer, here: systemPrograms !== undefined },
];

describe.each(engines)('records on $name', ({ make, here }) => {
  describe.skipIf(!here)('ended on purpose', () => {
    let trial: Trial;
    beforeAll(async () => {
      const made = await make();
      if (made === null) throw new Error('no such engine here');
      trial = made;
    }, 60_000);
    afterAll(async () => await trial?.close());
    const lost = { missing: 0, chainBreaks: 0, unexplained: 0 };

    test('the program is killed while it writes: every acknowledged row is there', { timeout: 60_000 }, async () => {
      const done = await killPrograms(trial.env, trial.records, 3, chanceFrom(seed));
      expect(done).toMatchObject({ kills: 3, ...lost });
      expect(done.acknowledged).toBeGreaterThan(3);
    });
    test('the database is killed with all its processes: every acknowledged row is there', {
      timeout: 60_000,
    }, async () => {
      const done = await killDatabase(trial.records, 2, chanceFrom(seed), trial);
      expect(done).toMatchObject({ kills: 2, ...lost });
      expect(done.acknowledged).toBeGreaterThan(10);
    });
    test('the clock jumps: what was written last is the newest', async () => {
      expect(await jumpClock(trial.records)).toEqual({ jumps: 7, wrong: [] });
    });
    test('two people at one enquiry and one placement', async () => {
      const second = await trial.again();
      const done = await twoEditors([trial.records, second], 12);
      await second.close();
      expect(done).toEqual({ rounds: 12, told: 12, wrong: [] });
    });
    test('the database is gone and comes back', { timeout: 60_000 }, async () => {
      const { down } = trial;
      if (down === undefined) return expect(trial.name).toBe('built-in'); // it brings itself back, as above
      const done = await databaseAway(trial.records, 1, 300, { down, up: trial.up });
      expect(done).toMatchObject({ times: 1, missing: 0, unexplained: 0 });
      expect(done.told.RECORDS_AWAY).toBeGreaterThan(0);
    });
  });
});

describe('nonsense', () => {
  let trial: TrialApp;
  beforeAll(async () => {
    trial = await appForTrials();
  }, 60_000);
  afterAll(async () => await trial?.close());

  // First: nonsense at the doors of coming and going signs the asker out.
  test('files: nothing fails on our side, nothing tells of the inside', { timeout: 60_000 }, async () => {
    const done = await fuzzFiles(trial.app, trial.enquiryId, trial.goodFile, 300, seed);
    expect(done).toMatchObject({ sent: 300, failed: [], leaks: [] });
    expect(done.byStatus['422']).toBeGreaterThan(0);
  });
  test('requests: nothing fails on our side, nothing tells of the inside', { timeout: 60_000 }, async () => {
    const done = await fuzzRequests(trial.app, trial.openapi, trial.ids, 600, seed);
    expect(done).toMatchObject({ failed: [], leaks: [] });
    expect(done.sent).toBeGreaterThanOrEqual(600);
    expect(done.byStatus['200']).toBeGreaterThan(0);
  });
});
