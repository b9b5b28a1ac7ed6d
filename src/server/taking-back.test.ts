// Does docs/taking-back.md say of every door that changes something how it is taken back, and of no other?
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const read = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');
const writing = ['post', 'put', 'patch', 'delete'];

it('every door that writes is listed with its way back', () => {
  const { paths } = JSON.parse(read('openapi.json')) as { paths: Record<string, object> };
  const doors = Object.entries(paths).flatMap(([path, methods]) =>
    Object.keys(methods)
      .filter((method) => writing.includes(method))
      .map((method) => `${method.toUpperCase()} ${path}`),
  );
  const rows = [...read('taking-back.md').matchAll(/^\| `([^`]+)` \| .+ \| (.+) \|$/gm)];
  expect(rows.map((row) => row[1]).sort()).toEqual(doors.sort());
  expect(
    rows.filter((row) => row[2]?.startsWith('not at all')).map((row) => row[1]),
    'what cannot be taken back is erasing alone',
  ).toEqual(['POST /api/placements/{id}/buyer/erasure', 'POST /api/privacy/due/erasure']);
});
