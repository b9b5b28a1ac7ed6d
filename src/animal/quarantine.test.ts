import { describe, expect, test } from 'vitest';
import { allFacts } from '../records/animal-facts.ts';
import type { ClearBy } from './event.ts';
import { miteWatch, quarantineState, testNames, treatmentState, usualQuarantineDays } from './quarantine.ts';
import { sloughState } from './slough.ts';
import { entry } from './testing/entry.ts';

const { care } = allFacts();
const start = (clearBy: ClearBy, tests = '') =>
  entry('quarantine', '2026-01-01', { step: 'start', why: 'new', where: 'back room', clearBy, days: 90, tests });
const clear = (name: string, on = '2026-02-01', result: 'clear' | 'not-clear' = 'clear') =>
  entry('test', on, { name, result, vet: 'as written' });

describe('quarantine', () => {
  test('by time: not on day 89, on day 90', () => {
    expect(quarantineState([start('time')], '2026-03-31')).toMatchObject({ daysDone: 89, mayEnd: false });
    expect(quarantineState([start('time')], '2026-04-01')).toMatchObject({
      daysDone: 90,
      mayEnd: true,
      overOn: '2026-04-01',
    });
  });
  test('by tests: all clear, whatever the time; a later "not clear" opens it again', () => {
    const tests = start('tests', 'Faeces, Swab');
    expect(quarantineState([tests, clear('faeces')], '2026-02-02')).toMatchObject({
      mayEnd: false,
      testsOpen: ['Swab'],
    });
    expect(quarantineState([tests, clear('faeces'), clear('swab')], '2026-02-02').mayEnd).toBe(true);
    const worse = clear('swab', '2026-02-03', 'not-clear');
    expect(quarantineState([tests, clear('faeces'), clear('swab'), worse], '2026-02-04').mayEnd).toBe(false);
  });
  test('a test from before the quarantine does not count', () => {
    expect(quarantineState([clear('swab', '2025-12-31'), start('tests', 'swab')], '2026-02-02').testsOpen).toEqual([
      'swab',
    ]);
  });
  test('by tests without naming any never ends by itself', () => {
    expect(quarantineState([start('tests')], '2027-01-01').mayEnd).toBe(false);
  });
  test('by both needs both', () => {
    expect(quarantineState([start('both', 'swab'), clear('swab')], '2026-03-31').mayEnd).toBe(false);
    expect(quarantineState([start('both', 'swab')], '2026-04-01').mayEnd).toBe(false);
    expect(quarantineState([start('both', 'swab'), clear('swab')], '2026-04-01').mayEnd).toBe(true);
  });
  test('it runs until somebody ends it', () => {
    const end = entry('quarantine', '2026-04-05', {
      step: 'end',
      why: '',
      where: '',
      clearBy: 'time',
      days: 0,
      tests: '',
    });
    expect(quarantineState([start('time')], '2026-09-01').running).toBe(true);
    expect(quarantineState([start('time'), end], '2026-04-05').running).toBe(false);
  });
  test('boas are given longer', () => {
    expect(usualQuarantineDays(care, 'Colubridae')).toBe(90);
    expect(usualQuarantineDays(care, 'Boidae')).toBe(180);
  });
  test('names of tests', () => expect(testNames(' A, b;c\n\n d')).toEqual(['A', 'b', 'c', 'd']));
});

describe('mite watch: 42 days after the last one seen', () => {
  const seen = (on: string, found = true) => entry('mites', on, { seen: found, where: 'palm' });
  test('day 41 watched, day 42 free', () => {
    expect(miteWatch([seen('2026-01-01')], care, '2026-02-11')).toMatchObject({ watching: true, daysLeft: 1 });
    expect(miteWatch([seen('2026-01-01')], care, '2026-02-12')).toMatchObject({
      watching: false,
      overOn: '2026-02-12',
    });
  });
  test('one more begins it anew; a look without a find does not shorten it', () => {
    expect(miteWatch([seen('2026-01-01'), seen('2026-02-10')], care, '2026-02-12').overOn).toBe('2026-03-24');
    expect(miteWatch([seen('2026-01-01'), seen('2026-01-20', false)], care, '2026-01-21').overOn).toBe('2026-02-12');
  });
  test('mites found at a look-over start it too', () => {
    const looked = entry('examination', '2026-01-01', {
      answers: { skin: ['mites'] },
      massG: null,
      outline: '',
      note: '',
    });
    expect(miteWatch([looked], care, '2026-01-02').watching).toBe(true);
  });
  test('the watch outlasts the longest-lived adult of the sheet', () => {
    expect(care.quarantine.mitesWatchDays?.value).toBeGreaterThan(40);
  });
});

describe('treatment', () => {
  const step = (on: string, what: string, kind: 'start' | 'given' | 'end') =>
    entry('treatment', on, { step: kind, what, amount: 'as the vet wrote', vet: 'vet' });
  test('runs from its start to its end, each by its own words', () => {
    const events = [
      step('2026-01-01', 'Eye wash', 'start'),
      step('2026-01-03', 'Wound care', 'start'),
      step('2026-01-05', 'eye wash ', 'end'),
    ];
    expect(treatmentState(events, '2026-01-04').running).toHaveLength(2);
    expect(treatmentState(events, '2026-01-05').running).toMatchObject([{ what: 'Wound care', since: '2026-01-03' }]);
  });
  test('a dose without a beginning is one', () => {
    expect(treatmentState([step('2026-01-01', 'Eye wash', 'given')], '2026-01-01').running).toHaveLength(1);
  });
});

describe('slough', () => {
  const at = (on: string, stage: 'cloudy' | 'clear' | 'complete' | 'pieces') => entry('slough', on, { stage });
  test('cloudy opens the window, clear keeps it open, complete ends it with a day of rest', () => {
    const open = [at('2026-05-01', 'cloudy'), at('2026-05-08', 'clear')];
    expect(sloughState(open, care, '2026-05-09')).toMatchObject({
      state: 'under-way',
      since: '2026-05-01',
      usuallyOverBy: '2026-05-15',
    });
    const off = [...open, at('2026-05-12', 'complete')];
    expect(sloughState(off, care, '2026-05-12').state).toBe('just-off');
    expect(sloughState(off, care, '2026-05-13').state).toBe('none');
  });
  test('overdue after 21 days, not on the 21st', () => {
    expect(sloughState([at('2026-05-01', 'cloudy')], care, '2026-05-22').overdue).toBe(false);
    expect(sloughState([at('2026-05-01', 'cloudy')], care, '2026-05-23').overdue).toBe(true);
  });
  test('pieces stay until a complete one', () => {
    expect(sloughState([at('2026-05-01', 'pieces')], care, '2026-06-01').state).toBe('pieces');
    expect(sloughState([at('2026-05-01', 'pieces'), at('2026-05-20', 'complete')], care, '2026-06-01').state).toBe(
      'none',
    );
  });
});
