import { expect, test } from 'vitest';
import { emptyDocument } from './document.ts';
import { namedStandard, standardOf } from './standard.ts';

const { answers } = emptyDocument;
const policy = {
  path: 'policy.standardId',
  value: { value: 'wales-shop' },
  was: {},
  by: 'm',
  at: '2026-12-01',
  why: 'x',
};

test.each([
  ['left open: the usual one', answers, [], undefined, 'home-third'],
  ['left open: the shop’s', answers, [policy], undefined, 'wales-shop'],
  ['chosen, the usual one too', { ...answers, standardChosen: true }, [policy], 'home-third', 'home-third'],
  ['chosen: none', { ...answers, standardId: null, standardChosen: true }, [policy], 'none', 'none'],
  [
    'kept before choices were marked',
    { ...answers, standardId: 'de-cornsnake' },
    [policy],
    'de-cornsnake',
    'de-cornsnake',
  ],
] as const)('%s', (_title, given, values, named, used) => {
  expect(namedStandard(given)).toBe(named);
  expect(standardOf(given, values)).toBe(used);
});
