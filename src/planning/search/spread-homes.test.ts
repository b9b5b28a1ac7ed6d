import { describe, expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import type { AskedHome, JudgedHome } from './judge-home.ts';
import { type HomeSolver, spreadHomes } from './spread-homes.ts';

const { enclosure } = searchInputOf('wood-1200');
const home = (name: string): AskedHome => ({ enclosure: { ...enclosure, name }, heart: null as never });
const judged = (name: string): JudgedHome => ({ verdict: 'holds', chanceFrac: 1, stillOpen: [name] });
const after = (ms: number) => new Promise<void>((go) => setTimeout(go, ms));
const now = async () => {};

describe('homes judged by several solvers', () => {
  it('come back in the order asked, whoever is quicker, and no solver has two at once', async () => {
    let most = 0;
    const solver = (ms: number): HomeSolver => {
      let busy = 0;
      return async ({ enclosure: e }) => {
        busy++;
        most = Math.max(most, busy);
        await after(ms);
        busy--;
        return judged(e.name);
      };
    };
    const { judge } = spreadHomes([solver(9), solver(1)], now);
    const names = Array.from({ length: 12 }, (_, i) => `home ${i}`);
    const [first, second] = await Promise.all([judge(names.map(home)), judge([home('later')])]);
    expect(first?.map((one) => one.stillOpen[0])).toEqual(names);
    expect(second?.map((one) => one.stillOpen[0])).toEqual(['later']);
    expect(most).toBe(1);
  });

  it('are given up once nobody wants to know', async () => {
    let solved = 0;
    const solver: HomeSolver = async ({ enclosure: e }) => {
      solved++;
      return judged(e.name);
    };
    const { judge } = spreadHomes([solver], now, () => solved >= 2);
    expect(await judge(['a', 'b', 'c', 'd'].map(home))).toBeNull();
    expect(solved).toBe(2);
  });

  it('pass a fault on', async () => {
    const { judge } = spreadHomes([async () => Promise.reject(new Error('broken'))], now);
    await expect(judge([home('a'), home('b')])).rejects.toThrow('broken');
  });
});
