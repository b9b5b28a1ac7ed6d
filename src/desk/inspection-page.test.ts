import { describe, expect, test } from 'vitest';
import { leadOf } from './inspection-page.ts';
import { paperUnits } from './paper-units.ts';

const all = {
  shopName: 'Thistle Yard',
  branchName: 'Counter',
  years: 3,
  search: '',
  oneOnly: false,
  today: '2026-11-27',
  animals: [1, 2],
};

describe('the line under the title says how much of the register is on the pages', () => {
  test.each([
    [all, '2 animals: all that are here, and those gone in the last 3 years', '2 Tiere: alle, die hier sind'],
    [
      { ...all, search: 'juniper', animals: [1] },
      '1 animal: only those with “juniper”',
      '1 Tier: nur die mit „juniper“',
    ],
    [
      { ...all, oneOnly: true, animals: [1] },
      '1 animal: the one that was asked for, not',
      '1 Tier: das eine, nach dem',
    ],
  ])('%#', (inspection, en, de) => {
    expect(leadOf(inspection, paperUnits({ language: 'en' }, 'england'))).toContain(en);
    expect(leadOf(inspection, paperUnits({ language: 'de' }, 'england'))).toContain(de);
    expect(leadOf(inspection, paperUnits({ language: 'de' }, 'england'))).toContain('Gedruckt 27.11.2026.');
  });
});
