// Planted faults: each must be found, and what is allowed must not be.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

const script = join(import.meta.dirname, 'check-rooms.mjs');

/** Runs the script on a src folder with these files in it. */
function check(files: Record<string, string>): { code: number | null; said: string } {
  const src = mkdtempSync(join(tmpdir(), 'warmstead-rooms-'));
  try {
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(src, name)), { recursive: true });
      writeFileSync(join(src, name), text);
    }
    const done = spawnSync(process.execPath, [script, src], { encoding: 'utf8' });
    return { code: done.status, said: done.stdout };
  } finally {
    rmSync(src, { recursive: true });
  }
}

const others = {
  'shared/a.ts': 'export const a = 1;',
  'physics/a.ts': 'export const a = 1;',
  'planning/a.ts': 'export const a = 1;',
  'desk/a.ts': 'export const a = 1;',
  'server/a.ts': 'export const a = 1;',
  'records/a.ts': 'export const a = 1;',
};

const refused: [string, string, string][] = [
  ['physics/x.ts', "import { a } from '../planning/a.ts';", 'physics must not import planning'],
  ['shared/x.ts', "export { a } from '../physics/a.ts';", 'shared must not import physics'],
  ['planning/x.ts', "import type { A } from '../records/a.ts';", 'planning must not import records'],
  ['records/x.ts', "import { a } from '../desk/a.ts';", 'records must not import desk'],
  ['desk/x.ts', "import { a } from '../server/a.ts';", 'desk must not import server'],
  ['cli/x.ts', "import { a } from '../server/a.ts';", 'cli must not import server'],
  ['web/x.tsx', "import { a } from '../desk/a.ts';", 'web must not import desk'],
  ['web/x.ts', "import { readFileSync } from 'node:fs';", 'web runs in a browser'],
  ['planning/x.ts', "const later = await import('../records/a.ts');", 'planning must not import records'],
  ['physics/x.ts', "import { readFileSync } from 'node:fs';", 'imports "node:fs"'],
  ['physics/x.ts', "import lodash from 'lodash';", 'imports "lodash"'],
  ['physics/x.ts', "import rows from '../../data/materials.json';", 'outside src'],
  ['physics/x.ts', "import { a } from '../shared/a';", 'with its ending .ts'],
  ['physics/x.ts', "import { a } from '../shared/b.ts';", 'existing file'],
  ['physics/x.ts', 'export const t = Date.now();', 'Date.now'],
  ['physics/x.ts', 'export const t = new Date();', 'new Date'],
  ['physics/x.ts', 'export const t = new Date;', 'new Date'],
  ['physics/x.ts', 'export const t = Date();', 'Date()'],
  ['physics/x.ts', 'export const t = performance.now();', 'performance'],
  ['proving/x.ts', 'export const t = Math.random();', 'Math.random'],
  ['physics/x.ts', "console.log('here');", 'console'],
  ['physics/x.ts', `export const t = \`it is \${Date.now()} now\`;`, 'Date.now'],
  ['elsewhere/x.ts', 'export const a = 1;', 'not a room'],
  ['x.ts', 'export const a = 1;', 'lies in no room'],
];

test.each(refused)('%s: %s', (name, text, said) => {
  const found = check({ ...others, [name]: text });
  expect(found.said).toContain(said);
  expect(found.code).toBe(1);
});

test('what is allowed is not found', () => {
  const found = check({
    ...others,
    'physics/x.ts': [
      "import { a } from '../shared/a.ts';",
      '// Date.now() and Math.random() are never used here',
      "export const text = 'console.log(new Date())';",
      'export const day = (iso: string) => new Date(iso).getTime();',
      'export const myDate = (x: number) => x + a;',
    ].join('\n'),
    'physics/x.test.ts': "import { readFileSync } from 'node:fs'; console.log(Date.now());",
    'planning/x.ts': "import { a } from '../physics/a.ts';",
    'server/x.ts': "import fastify from 'fastify';\nimport { a } from '../desk/a.ts';\nexport const now = new Date();",
    'web/x.tsx':
      "import rows from '../../data/materials.json';\nimport './sheet.css';\nimport { a } from '../planning/a.ts';",
  });
  expect(found.said).toMatch(/rooms: 11 files looked at, 0 wrong/);
  expect(found.code).toBe(0);
});

test('nothing looked at is not a pass', () => {
  expect(check({}).code).toBe(1);
});
