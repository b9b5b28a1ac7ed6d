// What this does: holds the table of which room may import which, and keeps clocks, chance and output out of the
// pure rooms. Why: the types of a pure room cannot refuse Date.now or Math.random, and nothing refuses an arrow.
// Usage: node scripts/check-rooms.mjs [folder of src]      exit code 1 = something is wrong, or nothing was looked at.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Each room may import itself and every room named; the order is that of the drawing in ARCHITECTURE.md. */
const pure = ['shared', 'physics', 'husbandry', 'animal', 'planning', 'proving'];
const arrows = {
  shared: [],
  physics: ['shared'],
  husbandry: ['physics', 'shared'],
  animal: ['husbandry', 'physics', 'shared'],
  planning: ['animal', 'husbandry', 'physics', 'shared'],
  proving: ['planning', 'animal', 'husbandry', 'physics', 'shared'],
  records: ['proving', 'planning', 'animal', 'husbandry', 'physics', 'shared'],
  desk: ['records', ...pure],
  server: ['desk', 'records', ...pure],
  cli: ['desk', 'records', ...pure],
  web: pure,
};

const refused = [
  [/\bDate\s*\.\s*now\b/, 'reads the clock (Date.now)'],
  [/\bnew\s+Date\s*(?:\(\s*\)|(?!\s*\())/, 'reads the clock (new Date without a time)'],
  [/(?<!new\s+|[.\w])Date\s*\(/, 'reads the clock (Date())'],
  [/\bperformance\s*\.\s*\w/, 'reads the clock (performance)'],
  [/\bMath\s*\.\s*random\b/, 'uses chance without a seed (Math.random)'],
  [/\bcrypto\s*\.\s*(?:randomUUID|getRandomValues)\b/, 'uses chance without a seed (crypto)'],
  [/\bconsole\s*\./, 'writes to the console'],
  [/\bglobalThis\b/, 'reaches for the surroundings (globalThis)'],
];

/** Code alone: comments gone, and the insides of texts blanked where `blankTexts`; lines stay where they are. */
export function codeOf(source, blankTexts) {
  const token = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g;
  return source.replace(token, (found) => {
    const lines = found.replace(/[^\n]/g, ' ');
    if (found.startsWith('/')) return lines;
    if (!blankTexts) return found;
    // A template's ${...} is code and stays.
    return found[0] === '`' ? found.replace(/\$\{[^}]*\}|[^\n]/g, (part) => (part.length > 1 ? part : ' ')) : lines;
  });
}

function importsOf(code) {
  const found = /(?:\bfrom\s*|\bimport\s*\(?\s*)(['"`])([^'"`\n]+)\1/g;
  return [...code.matchAll(found)].map((match) => ({ what: match[2], line: lineAt(code, match.index) }));
}

const lineAt = (text, index) => text.slice(0, index).split('\n').length;

/** Everything wrong in one file, each as { line, say }. */
export function wrongIn(src, file) {
  const [room, ...inside] = relative(src, file).split(sep);
  const source = readFileSync(file, 'utf8');
  if (inside.length === 0) return [{ line: 1, say: 'lies in no room' }];
  if (!(room in arrows)) return [{ line: 1, say: `"${room}" is not a room of the table` }];
  if (/\.test\.tsx?$/.test(file)) return [];
  const wrong = importsOf(codeOf(source, false)).flatMap(({ what, line }) =>
    wrongImport(src, file, room, what).map((say) => ({ line, say })),
  );
  if (!pure.includes(room)) return wrong;
  const code = codeOf(source, true);
  for (const [pattern, say] of refused) {
    const match = pattern.exec(code);
    if (match !== null) wrong.push({ line: lineAt(code, match.index), say: `${room} is pure, yet it ${say}` });
  }
  return wrong;
}

function wrongImport(src, file, room, what) {
  if (!what.startsWith('.')) {
    if (pure.includes(room)) return [`${room} is pure and depends on nothing, yet it imports "${what}"`];
    if (room === 'web' && what.startsWith('node:')) return [`web runs in a browser, yet it imports "${what}"`];
    return [];
  }
  const path = what.split('?')[0];
  const target = resolve(dirname(file), path);
  const [targetRoom] = relative(src, target).split(sep);
  if (targetRoom === '..') {
    return room === 'web' && path.endsWith('.json') ? [] : [`"${what}" lies outside src`];
  }
  const wrong = [];
  if (/\.(?:ts|tsx)$/.test(path) ? !existsSync(target) : pure.includes(room)) {
    wrong.push(`"${what}" must name an existing file with its ending .ts`);
  }
  if (targetRoom !== room && !arrows[room].includes(targetRoom)) {
    wrong.push(`${room} must not import ${targetRoom} ("${what}")`);
  }
  return wrong;
}

function filesIn(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.name === 'node_modules') return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

function main() {
  const src = resolve(process.argv[2] ?? join(dirname(fileURLToPath(import.meta.url)), '..', 'src'));
  const files = filesIn(src);
  const wrong = files.flatMap((file) => wrongIn(src, file).map((found) => ({ file, ...found })));
  for (const { file, line, say } of wrong) console.log(`${relative(process.cwd(), file)}:${line} ${say}`);
  console.log(`rooms: ${files.length} files looked at, ${wrong.length} wrong`);
  if (files.length === 0 || wrong.length > 0) process.exitCode = 1;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
