// What this does: builds the browser program, the server, the terminal and the worker when sources changed.
// Why: a fingerprint of names, sizes and times of all sources is kept beside the result; equal means nothing to do.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { root, runQuietly } from './prepare-run.mjs';

const sources = ['src', 'data', 'vite.config.ts', 'rolldown.config.ts', 'tsconfig.json', 'package-lock.json'];
const results = ['dist/web/index.html', 'dist/server/main.mjs', 'dist/cli/main.mjs', 'dist/worker/plan.mjs'];
const isTest = /\.test\.tsx?$/;

export async function ensureBuilt() {
  const now = fingerprint();
  if (isBuilt(now)) return;
  console.log('Building ...');
  rmSync(fingerprintFile(), { force: true });
  // Names of shared parts change with their content: old ones would pile up.
  for (const part of ['server', 'cli', 'worker', 'shared'])
    rmSync(join(root, 'dist', part), { recursive: true, force: true });
  const bin = (path) => join(root, 'node_modules', path);
  await runQuietly(process.execPath, [bin('vite/bin/vite.js'), 'build'], 'The pages could not be built.');
  compressPages(join(root, 'dist', 'web'));
  await runQuietly(
    process.execPath,
    [bin('rolldown/bin/cli.mjs'), '-c', 'rolldown.config.ts'],
    'The server could not be built.',
  );
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(fingerprintFile(), now);
}

/** Beside every text file its brotli and gzip form, so that the server compresses nothing while it answers. */
function compressPages(folder) {
  for (const name of readdirSync(folder, { recursive: true })) {
    if (!/\.(js|css|html|svg|wasm)$/.test(name)) continue;
    const content = readFileSync(join(folder, name));
    const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: content.length };
    writeFileSync(join(folder, `${name}.br`), brotliCompressSync(content, { params }));
    writeFileSync(join(folder, `${name}.gz`), gzipSync(content, { level: 9 }));
  }
}

/** True when dist/ was made from the sources as they are now. */
export function isBuilt(now = fingerprint()) {
  if (results.some((path) => !existsSync(join(root, path)))) return false;
  return existsSync(fingerprintFile()) && readFileSync(fingerprintFile(), 'utf8') === now;
}

const fingerprintFile = () => join(root, 'dist', 'made-from.txt');

function fingerprint() {
  const hash = createHash('sha256');
  for (const source of sources) if (existsSync(join(root, source))) add(hash, source);
  return hash.digest('hex');
}

function add(hash, path) {
  const facts = statSync(join(root, path));
  if (facts.isDirectory()) {
    for (const name of readdirSync(join(root, path)).sort()) add(hash, join(path, name));
  } else if (!isTest.test(path)) {
    hash.update(`${path}:${facts.size}:${facts.mtimeMs}\n`);
  }
}
