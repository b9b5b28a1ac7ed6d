// Writes docs/theory/tornado-*.svg, one for each example, and the tables in docs/theory/box-uncertainty.md: each uncertain parameter
// moved alone from the low to the high end of its belief, dial fixed, and what that does to the answer.
// Why: a page that says what matters most must be printed from the priors. Exit code 0; with --check 1 when a file differs.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Priors } from '../src/physics/priors.ts';
import { enclosureFrom } from '../src/physics/validate-enclosure.ts';
import { loadFacts } from '../src/records/facts.ts';
import { type Effect, effectsOf, measures } from './tornado/effects.ts';
import { tornadoSvg } from './tornado/picture.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const [open, close] = ['<!-- effects: written by scripts/write-tornado.ts -->', '<!-- end of effects -->'];
const { facts } = loadFacts(`${root}data`);
const priors = JSON.parse(readFileSync(`${root}data/priors.json`, 'utf8')) as Priors;

/** The examples by the name of their file, and what they are called above their picture. */
const boxes: Readonly<Record<string, string>> = {
  'wood-1200': 'Wooden box, 120 cm',
  'glass-mesh-900': 'Glass box, 90 cm, mesh lid',
  'large-wood-1800': 'Large wooden box, 180 cm',
  'pvc-1200': 'Foamed PVC box, 120 cm, radiant panel',
  'tall-wood': 'Tall wooden box',
  'tub-mat-600': 'Plastic tub, 60 cm, heat mat',
};

function exampleEffects(file: string): Effect[] {
  const read = enclosureFrom(JSON.parse(readFileSync(`${root}data/examples/${file}`, 'utf8')), facts.materials);
  if (!read.ok) throw new Error(`${file}: ${read.faults.map((f) => f.say).join(' ')}`);
  return effectsOf(read.value, facts.materials, priors);
}

const signed = (v: number, digits: number): string => (v >= 0 ? '+' : '−') + Math.abs(v).toFixed(digits);

function mainTable(effects: readonly Effect[]): string[] {
  const head = measures.map((m) => `${m.name} (${m.unit})`).join(' | ');
  const rows = effects.map((e) => {
    const cells = measures.map((m) => `${signed(e.low[m.id]!, m.digits)} / ${signed(e.high[m.id]!, m.digits)}`);
    const unit = e.name.endsWith('K') ? ' K' : '';
    return `| ${e.words} | ${e.from} to ${e.to}${unit} | ${cells.join(' | ')} |`;
  });
  return [`| parameter | 90 % of the belief | ${head} |`, `|---|---|${measures.map(() => '---').join('|')}|`, ...rows];
}

function othersTable(others: readonly (readonly [string, readonly Effect[]])[]): string[] {
  const rows = others.map(([name, effects]) => {
    const first = (id: string) =>
      [...effects]
        .sort((a, b) => b.width[id]! - a.width[id]!)
        .slice(0, 3)
        .map((e) => `${e.words} ${e.width[id]!.toFixed(1)}`)
        .join(', ');
    return `| ${name} | ${first('basking')} | ${first('cool')} |`;
  });
  return ['| example | basking surface (K, low to high) | cool-end air (K) |', '|---|---|---|', ...rows];
}

const pictures = (others: readonly (readonly [string, unknown])[]): string[] =>
  others.flatMap(([name]) => ['', `![${boxes[name]}: what each parameter alone changes](tornado-${name}.svg)`]);

function withTables(page: string, tables: readonly string[]): string {
  const start = page.indexOf(open);
  const end = page.indexOf(close);
  if (start < 0 || end < 0) throw new Error('docs/theory/box-uncertainty.md has lost the marks around its tables');
  return `${page.slice(0, start)}${open}\n\n${tables.join('\n')}\n\n${page.slice(end)}`;
}

function main(check: boolean): number {
  const names = readdirSync(`${root}data/examples`)
    .filter((f) => f.endsWith('.json'))
    .map((f) => f.replace('.json', ''))
    .sort();
  const unnamed = names.filter((name) => !(name in boxes));
  if (unnamed.length > 0) throw new Error(`scripts/write-tornado.ts has no title for ${unnamed.join(', ')}`);
  const all = names.map((name) => [name, exampleEffects(`${name}.json`)] as const);
  const [, wood] = all.find(([name]) => name === 'wood-1200')!;
  const others = all.filter(([name]) => name !== 'wood-1200');
  const page = `${root}docs/theory/box-uncertainty.md`;
  const wanted = [
    ...all.map(
      ([name, effects]) => [`${root}docs/theory/tornado-${name}.svg`, tornadoSvg(boxes[name]!, effects)] as const,
    ),
    [
      page,
      withTables(readFileSync(page, 'utf8'), [...mainTable(wood), '', ...othersTable(others), ...pictures(others)]),
    ] as const,
  ];
  let differs = 0;
  for (const [path, text] of wanted) {
    if (!check) writeFileSync(path, text);
    else if (readFileSync(path, 'utf8') !== text) {
      console.error(`${path.slice(root.length)} has changed: run npx tsx scripts/write-tornado.ts`);
      differs = 1;
    }
  }
  return differs;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = main(process.argv.includes('--check'));
