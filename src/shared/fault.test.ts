// docs/errors.md lists every fault code that stands in the source, and no other.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const source = new URL('../', import.meta.url);
const page = readFileSync(new URL('../../docs/errors.md', import.meta.url), 'utf8');
const code = /['"]([A-Z]{2,12}(?:_[A-Z0-9]+)+)['"]/g;

/** Words in capitals that are no fault codes: names of settings, and codes of Node and of packages. */
const otherNames = /^(WARMSTEAD_[A-Z_]+|DATABASE_URL|PG_VERSION|NO_COLOR|FORCE_COLOR|ERR_.*|FST_ERR_.*)$/;

function codesInSource(): Set<string> {
  const found = new Set<string>();
  for (const name of readdirSync(source, { recursive: true, encoding: 'utf8' })) {
    if (!/\.tsx?$/.test(name) || /\.test\.tsx?$/.test(name)) continue;
    for (const [, word = ''] of readFileSync(new URL(name.replaceAll('\\', '/'), source), 'utf8').matchAll(code)) {
      if (!otherNames.test(word)) found.add(word);
    }
  }
  return found;
}

it('docs/errors.md and the source name the same codes', () => {
  const inSource = [...codesInSource()].sort();
  const onPage = [...page.matchAll(/^\| `([A-Z0-9_]+)` \|/gm)].map(([, word]) => word).sort();
  expect(onPage, 'add or remove lines in docs/errors.md; names that are no faults go into otherNames').toEqual(
    inSource,
  );
  expect(inSource.length).toBeGreaterThan(40);
});
