// Which model and which facts gave an answer? Two short names that change whenever a rule, a formula or a fact does.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { programRoot } from './root.ts';

export interface Versions {
  readonly program: string;
  /** Program version and a fingerprint of everything that computes. */
  readonly model: string;
  /** Fingerprint of everything in data/. */
  readonly data: string;
}

const modelFolders = ['shared', 'physics', 'husbandry', 'animal', 'planning', 'proving'];
let known: Versions | undefined;

/** Read once in a process. */
export function versions(): Versions {
  known ??= versionsOf(programRoot());
  return known;
}

export function versionsOf(root: string): Versions {
  const program = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).version as string;
  const model = modelFolders.map((room) => join(root, 'src', room));
  return {
    program,
    model: `${program}+${fingerprint(model, (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))}`,
    data: fingerprint([join(root, 'data')], (name) => name.endsWith('.json')),
  };
}

function fingerprint(folders: readonly string[], counts: (name: string) => boolean): string {
  const hash = createHash('sha256');
  for (const folder of folders) addFolder(hash, folder, '', counts);
  return hash.digest('hex').slice(0, 12);
}

function addFolder(
  hash: ReturnType<typeof createHash>,
  folder: string,
  within: string,
  counts: (name: string) => boolean,
): void {
  if (!existsSync(folder)) return;
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) {
    const name = `${within}/${entry.name}`;
    if (entry.isDirectory()) addFolder(hash, join(folder, entry.name), name, counts);
    else if (counts(entry.name)) hash.update(`${name}\n`).update(readFileSync(join(folder, entry.name)));
  }
}
