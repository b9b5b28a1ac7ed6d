import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { compileLater, compilesEarly } from './compile-later.ts';

test('this engine knows what it is told, where it is told anything', () => {
  const said = (flag: string) =>
    spawnSync(process.execPath, ['-e', `require('v8').setFlagsFromString(${JSON.stringify(flag)})`], {
      encoding: 'utf8',
    }).stderr;
  expect(said('--no-such-thing=1')).toContain('no-such-thing');
  if (compilesEarly(process.versions.node)) expect(said('--interrupt-budget=700000')).toBe('');
  compileLater();
});

test('only the engine that it was measured on is told', () => {
  expect(compilesEarly('20.19.2')).toBe(true);
  expect(compilesEarly('24.21.0')).toBe(false);
  expect(compilesEarly('2.0.0')).toBe(false);
});
