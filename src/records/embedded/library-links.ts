// The built-in database's libraries call each other by short names, which a package cannot carry as links: its install
// script makes them. Where scripts are not allowed (npm ci --ignore-scripts) we make them, so that none is needed.
import { existsSync, readFileSync, symlinkSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';

interface Link {
  readonly source: string;
  readonly target: string;
}

/** @param native  the package's folder with bin/, lib/ and pg-symlinks.json  @returns how many were missing */
export function makeLibraryLinks(native: string): number {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return 0;
  const links = JSON.parse(readFileSync(list, 'utf8')) as readonly Link[];
  return links.filter((link) => makeLink(resolve(native), link)).length;
}

/** Paths in the list begin with the package's folder; nothing outside it is ever touched. */
function makeLink(native: string, { source, target }: Link): boolean {
  const [from, to] = [source, target].map((path) => resolve(dirname(native), path)) as [string, string];
  const within = [from, to].every((path) => path.startsWith(`${join(dirname(native), basename(native))}${sep}`));
  if (!within || existsSync(to) || !existsSync(from)) return false;
  try {
    symlinkSync(relative(dirname(to), from), to);
    return true;
  } catch {
    return false; // another start was first, or the folder is closed: starting says what is missing
  }
}
