import { afterAll, describe, expect, it } from 'vitest';
import { searchInputOf } from '../../bench/search.ts';
import { judgeHome } from '../planning/search/judge-home.ts';
import { searchKitsNow } from '../planning/search/search-kits.ts';
import { settingOf } from '../planning/search/solve-task.ts';
import { spreadHomes } from '../planning/search/spread-homes.ts';
import { whatHelps } from '../planning/search/what-helps.ts';
import { startKitSearchPool } from './kit-search-pool.ts';

const pool = startKitSearchPool(2);
afterAll(() => pool.close());
const mesh = searchInputOf('glass-mesh-900', { members: 4 });
/** As one thread finds it. */
const choice = searchKitsNow(mesh).choices[0]!;

describe('a search over real threads', { timeout: 120_000 }, () => {
  it('is not confused by one before it that had nothing to solve', async () => {
    const empty = await pool.search({ ...mesh, shelf: { ...mesh.shelf, items: [] } });
    expect(empty?.choices).toEqual([]);
    const [one, two] = await Promise.all([pool.search(mesh), pool.search(mesh)]);
    expect(one?.choices[0]).toEqual(choice);
    expect(two?.choices).toEqual(one?.choices);
  });

  it('finds what would help as one thread does', async () => {
    expect(choice.verdict).not.toBe('holds');
    const input = { ...mesh, choice };
    let homes = 0;
    const found = await pool.whatHelps(input, { onJudged: () => homes++ });
    const alone = spreadHomes([async (home) => judgeHome(home, settingOf(mesh))], async () => {});
    expect(found).toEqual(await whatHelps(input, alone));
    expect(found!.length).toBeGreaterThan(0);
    expect(homes).toBeGreaterThan(found!.length);
  });

  it('stops when told to, and searches again', async () => {
    let homes = 0;
    const stopped = await pool.whatHelps({ ...mesh, choice }, { onJudged: () => homes++, cancelled: () => homes >= 3 });
    expect(stopped).toBeNull();
    expect(homes).toBeLessThan(6);
    expect(await pool.search(mesh, { cancelled: () => true })).toBeNull();
    expect((await pool.search(mesh))?.choices[0]?.id).toBe(choice.id);
  });
});
