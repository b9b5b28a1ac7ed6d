import { expect, test } from 'vitest';
import { addDays, daysBetween } from '../../animal/calendar.ts';
import { entry } from '../../animal/testing/entry.ts';
import { loadCareFacts } from '../../records/animal-facts.ts';
import { dataFile } from '../../records/data-files.ts';
import { ownShare, wilsonInterval } from './own-share.ts';
import { firstColdNight, firstHotDay } from './season.ts';
import { taskKinds, taskState } from './task.ts';
import { type AftercareInput, aftercareTasks } from './tasks.ts';
import { sayTask } from './words/say.ts';

const { facts: care, faults } = loadCareFacts();
const day = (lowC: number, highC: number) => ({ lowC, highC, rhPct: 50, sunPeakWPerM2: 0 });
const room = { winter: day(15, 20), summer: day(21, 29) };
const lamp = {
  id: 'lamp',
  fittedOn: '2026-09-01',
  hoursPerDay: 12,
  dutyFrac: 0.4,
  control: 'dimming' as const,
  lifeLowH: 750,
  lifeHighH: 1000,
  lifeSource: 'UWEX-LAMPS',
  kind: 'basking-lamp' as const,
};
const input: AftercareInput = {
  releasedOn: '2026-09-01',
  southern: false,
  growing: true,
  events: [entry('weighing', '2026-08-25', { massG: 60 })],
  firstMealOn: null,
  nextMealOn: '2026-09-05',
  room,
  readRoomC: { low: 19, high: 26 },
  heaters: [lamp],
  instruments: [
    { id: 'a', name: 'A', checkedOn: '2026-08-20' },
    { id: 'b', name: 'B', checkedOn: null },
  ],
  moveUp: { limitCm: 120, now: false, earliest: '2027-03-01', likely: '2027-06-01', latest: null },
};
const byKey = (changed: Partial<AftercareInput> = {}) =>
  Object.fromEntries(aftercareTasks({ ...input, ...changed }, care).map((one) => [one.key, one]));

test('the facts are sound and every source that a task names is in data/sources.json', () => {
  expect(faults).toEqual([]);
  const sources = dataFile('sources.json') as Record<string, unknown>;
  for (const task of aftercareTasks(input, care))
    for (const key of task.sources) expect(sources, task.key).toHaveProperty([key]);
  expect(sources).toHaveProperty('WILSON1927');
});

test('calls on day 2 and 7, and 2 days after the meal that is expected or was taken', () => {
  expect(byKey()['call-first']).toMatchObject({ from: '2026-09-03', to: '2026-09-03' });
  expect(byKey()['call-week']!.to).toBe('2026-09-08');
  expect(byKey()['call-meal']!.to).toBe('2026-09-07');
  expect(byKey({ firstMealOn: '2026-09-12' })['call-meal']!.to).toBe('2026-09-14');
});

test('a lamp that burns 12 hours a day for 750 to 1000 hours is due from day 62 to 83', () => {
  const task = byKey()['renew-heater:lamp:2026-09-01']!;
  expect([task.from, task.to]).toEqual([addDays('2026-09-01', 62), addDays('2026-09-01', 83)]);
  // Switched on and off at four tenths it burns 4.8 hours a day: 156 days.
  const switched = byKey({ heaters: [{ ...lamp, control: 'on-off' }] })['renew-heater:lamp:2026-09-01']!;
  expect(switched.from).toBe(addDays('2026-09-01', 156));
  // Without a plan, or without a thermostat, it is taken to burn all its hours; only the first says that it is taken so.
  const unknown = byKey({ heaters: [{ ...lamp, control: 'on-off', dutyFrac: null }] })['renew-heater:lamp:2026-09-01']!;
  expect([unknown.from, unknown.blanks.assumed]).toEqual([task.from, 1]);
  const always = byKey({ heaters: [{ ...lamp, control: null, dutyFrac: 0.1 }] })['renew-heater:lamp:2026-09-01']!;
  expect([always.from, always.blanks.assumed]).toEqual([task.from, undefined]);
  expect(byKey({ heaters: [{ ...lamp, dutyFrac: 0 }] })).not.toHaveProperty(['renew-heater:lamp:2026-09-01']);
});

test('weighing waits until the animal has settled; an instrument never checked is due at once, for a week', () => {
  expect(byKey()['weigh:2026-08-25']).toMatchObject({ from: '2026-09-15', to: '2026-09-18' });
  expect(byKey()['check-instrument:a:2026-08-20']!.from).toBe('2027-08-20');
  expect(byKey()['check-instrument:b:never']).toMatchObject({ from: '2026-09-01', to: '2026-09-08' });
});

test('what comes again is another task once it was done', () => {
  const weighed = byKey({ events: [...input.events, entry('weighing', '2026-09-16', { massG: 66 })] });
  expect(weighed).not.toHaveProperty(['weigh:2026-08-25']);
  expect(weighed['weigh:2026-09-16']!.from > '2026-09-16').toBe(true);
  const renewed = byKey({ heaters: [{ ...lamp, fittedOn: '2026-11-20' }] });
  expect(renewed['renew-heater:lamp:2026-11-20']!.from).toBe(addDays('2026-11-20', 62));
});

test('growth decides the move; none is told when the box lasts for life', () => {
  expect(byKey()['move-up:120']).toMatchObject({ from: '2027-03-01', to: '2027-06-01', blanks: { limitCm: 120 } });
  expect(byKey({ moveUp: { ...input.moveUp!, now: true } })['move-up:120']).toMatchObject({ to: '2026-09-01' });
  expect(byKey({ moveUp: { ...input.moveUp!, earliest: null } })).not.toHaveProperty(['move-up:120']);
});

test('the first night colder than any read comes in autumn, half a year later in the south', () => {
  const north = firstColdNight(room, 19, '2026-07-20', care.aftercare, false)!;
  // 19 of 15 to 21 is a third of the way into winter: acos(1/3) of the half circle after 21 July.
  expect(daysBetween('2026-07-22', north.to)).toBeGreaterThan(68);
  expect(daysBetween('2026-07-22', north.to)).toBeLessThan(74);
  expect(daysBetween(north.from, north.to)).toBe(21);
  const south = firstColdNight(room, 19, '2026-07-20', care.aftercare, true)!;
  expect(south.to).toBe('2026-07-20');
});

test('colder readings in the proof make the task later, and none when winter was read', () => {
  const at = (readC: number) => firstColdNight(room, readC, '2026-08-01', care.aftercare, false)?.to ?? 'none';
  expect([20, 19, 18, 17, 16].map(at)).toEqual([20, 19, 18, 17, 16].map(at).sort());
  expect(new Set([20, 19, 18, 17, 16].map(at)).size).toBe(5);
  expect(at(15)).toBe('none');
  expect(firstHotDay(room, 29, '2026-01-01', care.aftercare, false)).toBeNull();
  expect(firstHotDay(room, 26, '2026-01-01', care.aftercare, false)!.to.slice(0, 7)).toBe('2026-05');
  const flat = { winter: day(20, 24), summer: day(20, 24) };
  expect(firstColdNight(flat, 22, '2026-08-01', care.aftercare, false)).toBeNull();
});

test('a room that was not read asks for a proof and promises no night', () => {
  const tasks = byKey({ readRoomC: null });
  expect(tasks).toHaveProperty('prove-home');
  expect(tasks).not.toHaveProperty(['prove-cold:19']);
  expect(byKey()).toHaveProperty(['prove-cold:19']);
});

test('done, later, due, overdue', () => {
  const task = byKey()['renew-heater:lamp:2026-09-01']!;
  const state = (today: string, done: string[] = []) => taskState(task, new Set(done), today);
  expect(state(addDays(task.from, -1))).toBe('later');
  expect(state(task.from)).toBe('due');
  expect(state(task.to)).toBe('due');
  expect(state(addDays(task.to, 1))).toBe('overdue');
  expect(state(addDays(task.to, 1), [task.key])).toBe('done');
});

test('every kind is said in both languages with no blank left open', () => {
  const tasks = [...aftercareTasks(input, care), ...aftercareTasks({ ...input, readRoomC: null }, care)];
  expect(new Set(tasks.map((one) => one.kind))).toEqual(new Set(taskKinds));
  for (const task of tasks)
    for (const language of ['en', 'de'] as const) {
      const said = sayTask(task, language);
      expect(`${said.title} ${said.why}`, task.key).not.toMatch(/[{}]/);
      expect(said.ask.length).toBe(task.ask.length);
    }
  expect(sayTask(byKey()['prove-cold:19']!, 'de').why).toContain('19 °C');
  const nameless = byKey({ instruments: [{ id: 'h1', name: '', n: 2, checkedOn: null }] })[
    'check-instrument:h1:never'
  ]!;
  expect(sayTask(nameless, 'en').title).toBe('Check the instrument: thermometer 2 of the home');
  expect(sayTask(byKey()['call-first']!, 'en', 'keeper').title).toBe('The first nights');
  const renewal = (part: object) => byKey({ heaters: [{ ...lamp, ...part }] })['renew-heater:lamp:2026-09-01']!;
  expect(sayTask(renewal({}), 'en').title).toBe('Renew the heater: basking lamp');
  expect(sayTask(renewal({ kind: 'halogen-lamp', n: 2 }), 'de').title).toBe('Wärmequelle erneuern: Halogenlampe 2');
  const { heaterKind: _, ...before } = renewal({}).blanks;
  expect(sayTask({ ...renewal({}), blanks: before }, 'en').title, 'kept before it was named').toBe(
    'Renew the heater: the one fitted before',
  );
});

test('interval of a share: printed cases, mirror, and too few to say', () => {
  const [low, high] = Object.values(wilsonInterval(5, 10));
  expect(low).toBeCloseTo(0.2366, 4);
  expect(high).toBeCloseTo(0.7634, 4);
  expect(wilsonInterval(0, 30).low).toBe(0);
  expect(wilsonInterval(0, 30).high).toBeCloseTo(1.959964 ** 2 / 30 / (1 + 1.959964 ** 2 / 30), 12);
  const [few, many] = [wilsonInterval(3, 40), wilsonInterval(37, 40)];
  expect(few.low).toBeCloseTo(1 - many.high, 12);
  expect(ownShare(1, 29, 60, care.aftercare).share).toBeNull();
  expect(ownShare(1, 30, 60, care.aftercare).share!.middle).toBeCloseTo(1 / 30, 12);
});
