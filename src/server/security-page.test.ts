// docs/security.md maps requirements to tests; a test that it names has to be there.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const root = new URL('../../', import.meta.url);
const rows = readFileSync(new URL('docs/security.md', root), 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| Requirement'))
  .map((line) => line.split(' | ').map((cell) => cell.replace(/^\| | \|$/g, '').trim()));

test('every test that the page names is in its file', () => {
  expect(rows.length).toBeGreaterThan(25);
  for (const [, , name = '', file = ''] of rows) {
    const code = readFileSync(new URL(file.replaceAll('`', ''), root), 'utf8');
    expect(code.includes(`'${name}'`), `${file}: ${name}`).toBe(true);
  }
});
