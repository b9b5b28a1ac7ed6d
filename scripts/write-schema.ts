// Writes docs/enclosure.schema.json and the table of fields in docs/formats.md from src/physics/enclosure-fields.ts.
// Why: a limit lives once; the published files are printed from it. Exit code 0; with --check 1 when a file differs.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { enclosureFields } from '../src/physics/enclosure-fields.ts';
import { schemaFrom } from '../src/physics/field-schema.ts';
import { allowedInWords } from '../src/physics/field-tree.ts';
import { enclosureTree } from '../src/physics/validate-enclosure.ts';

const schemaPath = fileURLToPath(new URL('../docs/enclosure.schema.json', import.meta.url));
const formatsPath = fileURLToPath(new URL('../docs/formats.md', import.meta.url));
const [open, close] = ['<!-- fields: written by scripts/write-schema.ts -->', '<!-- end of fields -->'];

export const schemaText = (): string => `${JSON.stringify(schemaFrom(enclosureTree), null, 2)}\n`;

/** The page with its table of fields written anew. The six panels have the same fields: only the front is listed. */
export function formatsText(page: string): string {
  const rows = enclosureFields
    .filter(
      (f) => f.path !== '' && !/panels\.(back|left|right|top|bottom)/.test(f.path) && !/room\.summer/.test(f.path),
    )
    .map((f) => {
      const path = f.path.replace('panels.front', 'panels.*').replace('room.winter', 'room.*');
      const say = f.say
        .replace('the front panel', 'the panel')
        .replace('the coldest day', 'the coldest or hottest day');
      const allowed = allowedInWords(f).replaceAll('|', '\\|');
      return `| \`${path}\` | ${say} | ${allowed} | ${f.optional ? 'may be left out' : 'required'} |`;
    });
  const table = ['| Field | What | Allowed | |', '|---|---|---|---|', ...rows].join('\n');
  const start = page.indexOf(open);
  const end = page.indexOf(close);
  if (start < 0 || end < 0) throw new Error('docs/formats.md has lost the marks around its table of fields');
  return `${page.slice(0, start)}${open}\n\n${table}\n\n${page.slice(end)}`;
}

function main(check: boolean): number {
  const page = readFileSync(formatsPath, 'utf8');
  const wanted = [
    [schemaPath, schemaText()],
    [formatsPath, formatsText(page)],
  ] as const;
  let differs = 0;
  for (const [path, text] of wanted) {
    if (check && readFileSync(path, 'utf8') !== text) {
      console.error(`${path} differs from src/physics/enclosure-fields.ts: run scripts/write-schema.ts`);
      differs = 1;
    }
    if (!check) writeFileSync(path, text);
  }
  return differs;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = main(process.argv.includes('--check'));
