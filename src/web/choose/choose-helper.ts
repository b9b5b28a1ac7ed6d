// Two workers share a search: the leading one's side of their channel, and the side of the one that only solves.
/// <reference lib="webworker" />

import type { SurfaceSolver } from '../../planning/search/drive-search.ts';
import { judgeHome } from '../../planning/search/judge-home.ts';
import type { SearchInput } from '../../planning/search/search-input.ts';
import { type SolveSetting, settingOf, type TaskSolver, taskSolver } from '../../planning/search/solve-task.ts';
import type { HomeSolver } from '../../planning/search/spread-homes.ts';
import type { HelperReply, HelperRequest } from './choose-protocol.ts';

/** The other worker, behind a port, for one search after the other. */
export interface Helper {
  readonly solverFor: (input: SearchInput) => SurfaceSolver;
  readonly judgeFor: (input: SearchInput) => HomeSolver;
}

export function helperBehind(port: MessagePort): Helper {
  const waiting = new Map<number, (reply: HelperReply) => void>();
  let seq = 0;
  port.onmessage = ({ data }: MessageEvent<HelperReply>) => {
    waiting.get(data.seq)?.(data);
    waiting.delete(data.seq);
  };
  const ask = (request: (seq: number) => HelperRequest): Promise<HelperReply> =>
    new Promise((done) => {
      seq++;
      waiting.set(seq, done);
      port.postMessage(request(seq));
    });
  const prepare = (input: SearchInput) =>
    port.postMessage({ kind: 'prepare', setting: settingOf(input) } satisfies HelperRequest);
  return {
    solverFor: (input) => {
      prepare(input);
      const handed = new Set<number>();
      return {
        solve: async (task, enclosure) => {
          const known = handed.has(task.arrangement);
          handed.add(task.arrangement);
          const reply = await ask((n) => ({ kind: 'solve', seq: n, task, enclosure: known ? null : enclosure }));
          return 'surfaces' in reply ? reply.surfaces : [];
        },
      };
    },
    judgeFor: (input) => {
      prepare(input);
      return async ({ enclosure, heart }) => {
        const reply = await ask((n) => ({ kind: 'judge', seq: n, home: { enclosure, heart } }));
        if (!('judged' in reply)) throw new Error('a helper answered another question');
        return reply.judged;
      };
    },
  };
}

/** This worker helps: it solves what comes through the port. */
export function help(port: MessagePort, onAsked: () => void): void {
  let setting: SolveSetting | null = null;
  let solver: TaskSolver | null = null;
  const answer = (reply: HelperReply) => port.postMessage(reply);
  port.onmessage = ({ data }: MessageEvent<HelperRequest>) => {
    onAsked();
    if (data.kind === 'prepare') {
      setting = data.setting;
      solver = taskSolver(setting);
    } else if (!setting || !solver) throw new Error('a task came before its search');
    else if (data.kind === 'judge') answer({ seq: data.seq, judged: judgeHome(data.home, setting) });
    else answer({ seq: data.seq, surfaces: solver(data.task, data.enclosure) });
  };
}
