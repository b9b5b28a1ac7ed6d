import { expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { seededUniform } from '../../shared/seeded.ts';
import { driveSearch, type SurfaceSolver } from './drive-search.ts';
import { prepareSearch } from './prepare-search.ts';
import type { SearchAnswer } from './search-answer.ts';
import type { SearchInput } from './search-input.ts';
import type { MemberSurface } from './surface.ts';

const members = 16;

function colder(example: string, byK: number): SearchInput {
  const input = searchInputOf(example, { members });
  const { winter, summer } = input.enclosure.room;
  const room = { winter: { ...winter, lowC: winter.lowC - byK, highC: winter.highC - byK }, summer };
  return { ...input, enclosure: { ...input.enclosure, room } };
}

/** Threads that end their pieces of work in an order of their own. */
async function inOrder(
  input: SearchInput,
  seed: number,
  threads: number,
  solved = new Map<string, readonly MemberSurface[]>(),
): Promise<SearchAnswer> {
  const next = seededUniform(seed);
  const prepared = prepareSearch(input);
  const solver: SurfaceSolver = {
    solve: async (task): Promise<readonly MemberSurface[]> => {
      const turns = Math.floor(next() * 12);
      for (let i = 0; i < turns; i++) await Promise.resolve();
      const key = Object.values(task).join(' ');
      const surfaces = solved.get(key) ?? prepared.solve(task);
      solved.set(key, surfaces);
      return surfaces;
    },
  };
  const solvers = Array.from({ length: threads }, () => solver);
  return (await driveSearch(input, solvers, { prepared }))!;
}

/** What a person is told of the choices and of why nothing holds. */
const told = ({ choices, none, noneNeed }: SearchAnswer) => ({ choices, none, noneNeed });

it.each([
  ['nothing holds', colder('glass-mesh-900', 8)],
  ['something may', searchInputOf('wood-1200', { members })],
])(
  'where %s the same is told whichever thread ends first, of every version',
  { timeout: 120_000 },
  async (_, input) => {
    const solved = new Map<string, readonly MemberSurface[]>();
    const one = await inOrder(input, 1, 1, solved);
    expect(one.choices.length).toBeGreaterThan(1);
    expect(one.choices.map((c) => c.versions)).toEqual(one.choices.map(() => members));
    for (const [seed, threads] of [
      [2, 2],
      [3, 2],
      [4, 5],
    ] as const)
      expect(told(await inOrder(input, seed, threads, solved))).toEqual(told(one));
  },
);

it('a kit given up early is spoken of without a range', async () => {
  const { choices, fellOut } = await inOrder(colder('glass-mesh-900', 8), 1, 1);
  expect(choices[0]?.verdict).toBe('fails');
  const early = fellOut.filter((f) => f.versions < members);
  expect(early.length).toBeGreaterThan(3);
  for (const { need } of early) expect(need?.found).toMatch(/^-?[\d.]+ \S+$/);
});
