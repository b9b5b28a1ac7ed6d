// The channel between two searching workers, over real ports.
import { expect, it } from 'vitest';
import { searchInputOf } from '../../../bench/search.ts';
import { judgeHome } from '../../planning/search/judge-home.ts';
import { prepareSearch } from '../../planning/search/prepare-search.ts';
import { searchKitsNow } from '../../planning/search/search-kits.ts';
import { settingOf } from '../../planning/search/solve-task.ts';
import { help, helperBehind } from './choose-helper.ts';

it('lines and judged homes come back as one worker alone finds them, whatever is asked at once', async () => {
  const { port1, port2 } = new MessageChannel();
  let asked = 0;
  help(port2, () => asked++);
  const helper = helperBehind(port1);
  const input = searchInputOf('tub-mat-600', { members: 4 });
  const prepared = prepareSearch(input);
  const solver = helper.solverFor(input);
  const tasks = prepared.search.states.slice(0, 3).map(({ index }) => ({ arrangement: index, from: 0, to: 2 }));
  const choice = searchKitsNow(input).choices[0]!;
  const home = { enclosure: choice.enclosure, heart: choice.heart };
  const judge = helper.judgeFor(input);
  const [judged, ...lines] = await Promise.all([
    judge(home),
    ...tasks.map((task) => solver.solve(task, prepared.search.states[task.arrangement]!.arrangement.enclosure)),
  ]);
  expect(judged).toEqual(judgeHome(home, settingOf(input)));
  expect(lines).toEqual(tasks.map((task) => prepared.solve(task)));
  expect(asked).toBe(2 + 1 + tasks.length);
  port1.close();
});
