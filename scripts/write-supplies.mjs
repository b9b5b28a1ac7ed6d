// What this does: lists the packages that run in the program with their licences (docs/licences.md) and writes the bill of
// materials (docs/sbom.cdx.json, CycloneDX). Why: who ships a program must be able to say what is in it.
// Usage: node scripts/write-supplies.mjs [--check]      exit code 1 = a package without a licence that we allow, or with
// --check a list that is not up to date.
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(fileURLToPath(new URL('.', import.meta.url)), '..');

/** Licences that may be passed on with a program under MIT; anything else is looked at by a person first (our choice). */
const allowed = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'OFL-1.1',
  'Python-2.0',
  'MIT-0',
  'PostgreSQL',
  'Unlicense',
  'CC0-1.0',
];

/** Packages of the lock file that are there when the program runs; those of other machines too. */
export function packagesThatRun(lock) {
  return Object.entries(lock.packages)
    .filter(([path, one]) => path !== '' && one.dev !== true && one.devOptional !== true)
    .map(([path, one]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version: one.version,
      licence: one.license ?? 'not said',
      hasScript: one.hasInstallScript === true,
      optional: one.optional === true,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

/** "(MIT OR X)" is allowed when one of them is; "A AND B" when both are. */
export function isAllowed(licence) {
  const parts = licence.replace(/[()]/g, '').split(/ OR /);
  return parts.some((part) => part.split(/ AND /).every((one) => allowed.includes(one.trim())));
}

export function licencesPage(packages) {
  const rows = packages.map((one) => {
    const notes = [one.optional ? 'only on its kind of machine' : '', one.hasScript ? 'has an install script' : ''];
    return `| ${one.name} | ${one.version} | ${one.licence} | ${notes.filter((note) => note !== '').join('; ')} |`;
  });
  return [
    '# Packages and their licences',
    '',
    'Written by `node scripts/write-supplies.mjs` from `package-lock.json`: everything that is there when the program runs.',
    'Tools that only build and test it are left out. The same list for machines is `docs/sbom.cdx.json` (CycloneDX).',
    'Every version is fixed, and every package is checked against its hash in the lock file when it is installed.',
    '',
    `${packages.length} packages.`,
    '',
    '| Package | Version | Licence | |',
    '|---|---|---|---|',
    ...rows,
    '',
    'Known weaknesses: `npm audit` asks the registry. Where this program was built the registry does not answer that',
    'question, so it could not be asked; run `npm audit --omit=dev` where yours does.',
    '',
  ].join('\n');
}

/** npm's own bill, without what changes at every writing or tells of the machine it was written on. */
function billOfMaterials() {
  const made = spawnSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--omit', 'dev', '--package-lock-only'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (made.status !== 0) throw new Error(`npm sbom: ${made.stderr.slice(0, 300)}`);
  const bill = JSON.parse(made.stdout);
  delete bill.serialNumber;
  delete bill.metadata.timestamp;
  delete bill.metadata.tools;
  // npm takes the name of the folder.
  bill.metadata.component.name = bill.metadata.component['bom-ref'].split('@')[0];
  for (const one of [bill.metadata.component, ...bill.components]) {
    const kept = (one.externalReferences ?? []).filter((ref) => ref.type !== 'distribution');
    if (kept.length > 0) one.externalReferences = kept;
    else delete one.externalReferences;
  }
  return `${JSON.stringify(bill, null, 2)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const packages = packagesThatRun(JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')));
  const refused = packages.filter((one) => !isAllowed(one.licence));
  for (const one of refused)
    console.error(`${one.name} ${one.version}: ${one.licence} is not on the list of allowed licences`);
  const files = { 'docs/licences.md': licencesPage(packages), 'docs/sbom.cdx.json': billOfMaterials() };
  const old = Object.entries(files).filter(([name, text]) => {
    if (!process.argv.includes('--check')) {
      writeFileSync(join(root, name), text);
      return false;
    }
    return readFileSync(join(root, name), 'utf8') !== text;
  });
  for (const [name] of old) console.error(`${name} is not up to date: run node scripts/write-supplies.mjs`);
  console.log(`${packages.length} packages, ${refused.length} with a licence to look at`);
  process.exitCode = refused.length + old.length > 0 ? 1 : 0;
}
