// Where does the program itself lie? Its facts (data/), migrations and built pages are read from there,
// whether it runs from sources or from dist/.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

let found: string | undefined;

/** The folder that holds package.json of this program. */
export function programRoot(): string {
  found ??= rootAbove(dirname(fileURLToPath(import.meta.url)));
  return found;
}

function rootAbove(folder: string): string {
  const manifest = join(folder, 'package.json');
  if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).name === 'warmstead') return folder;
  const above = dirname(folder);
  if (above === folder) throw new Error('the program does not find its own package.json');
  return rootAbove(above);
}
