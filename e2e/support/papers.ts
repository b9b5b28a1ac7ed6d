// The papers that the program itself writes, filled with something in every part, and what they say once that is left out
// which is cited as it is called.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RunningProgram } from './program.ts';

const data = (file: string) => JSON.parse(readFileSync(join(import.meta.dirname, '../../data', file), 'utf8'));
const sources = data('sources.json') as Readonly<
  Record<string, { readonly title: string; readonly authors?: string; readonly url?: string }>
>;

const register = data('register.json') as readonly {
  readonly laws?: Readonly<Record<string, { readonly at: string }>>;
}[];

/** Titles, authors and addresses of all sources, and the places in laws. */
export const citedSources: readonly string[] = [
  ...Object.values(sources).flatMap(({ title, authors = '', url = '' }) => [url, title, authors]),
  ...register.flatMap(({ laws = {} }) => Object.values(laws).map(({ at }) => at)),
].filter((one) => one.length > 3);

/** Every page that the program writes, without language and units. */
export const ownPapers = (placementId: string): readonly string[] => [
  `/api/placements/${placementId}/pack.pdf?`,
  '/api/inspection.pdf?search=&',
  '/api/shop-values.pdf?',
];

/** Why the own values and corrections below were made: typed by a person. */
export const typedWhy = 'Counted twice 7';

/** Own values of every unit, one of them taken back, and corrections of an entry and of the register. */
export async function fillPapers(program: RunningProgram, animalId: string): Promise<void> {
  const send = async (path: string, body: object, method = 'POST'): Promise<{ readonly id: string }> => {
    const answer = await fetch(`${program.url}${path}`, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
    return (await answer.json()) as { id: string };
  };
  const values: readonly (readonly [string, object])[] = [
    ['species.corn.all.baskingSurfaceC', { low: 29.5, high: 33 }],
    ['species.corn.adult.totalLengthCm', { low: 85, high: 140 }],
    ['species.corn.hatchling.massG', { value: 6.5 }],
    ['species.corn.all.rhPct', { low: 42, high: 62 }],
  ];
  for (const [path, value] of values) {
    const { id } = await send('/api/overlays', { path, value, why: typedWhy });
    if (path.endsWith('rhPct')) await send(`/api/overlays/${id}/withdrawal`, { why: typedWhy });
  }
  const entries = `/api/animals/${animalId}/entries`;
  for (const [kind, body, better] of [
    ['weighing', { massG: 812 }, { massG: 815 }],
    ['length', { totalLengthCm: 118, snoutVentMm: null, errorMm: 12, how: 'ruler' }, null],
  ] as const) {
    const { id } = await send(entries, { kind, body });
    await send(`${entries}/${id}/correction`, { body: better, reason: typedWhy });
  }
  await send(
    `/api/animals/${animalId}/register`,
    { values: { sex: 'male', hatched: '2023-06-05' }, reason: typedWhy },
    'PUT',
  );
  await send(
    `/api/animals/${animalId}/register`,
    { values: { sex: 'female', hatched: '2023-06-04' }, reason: typedWhy },
    'PUT',
  );
}

export async function fetchPaper(program: RunningProgram, path: string): Promise<Buffer> {
  const answer = await fetch(`${program.url}${path}`);
  if (answer.headers.get('content-type') !== 'application/pdf') throw new Error(`${path}: ${await answer.text()}`);
  return Buffer.from(await answer.arrayBuffer());
}

/** Numbers of animals, whole or their beginning; a line may break behind a hyphen. */
const id = /(?<![\p{L}\d-])(?=[a-f]*\d)[0-9a-f]{8}(?:-\s?[0-9a-f]{4}){0,3}(?:-\s?[0-9a-f]{12})?(?![\p{L}\d])/gu;

/** All words of a paper in the order in which they are read, with one gap between each. */
export const paperText = (pdf: Buffer): string =>
  execFileSync('pdftotext', ['-raw', '-', '-'], { input: pdf, maxBuffer: 1 << 26 })
    .toString('utf8')
    .replace(/[\u200b\u2060]/g, '')
    .replace(/\s+/g, ' ')
    .replace(id, ' ');

/** A line may break anywhere in what is cited. */
const brokenAnywhere = (one: string): RegExp =>
  new RegExp(
    [...one.replace(/\s/g, '')].map((c) => c.replace(/[\\^$.*+?()[\]{}|/]/, '\\$&')).join('[\\s\\u00ad-]*'),
    'gu',
  );

/** The longest is taken out first: one title may stand within another. */
export const withoutQuoted = (text: string, quoted: readonly string[]): string =>
  [...quoted].sort((a, b) => b.length - a.length).reduce((left, one) => left.replace(brokenAnywhere(one), ' '), text);
