// The search, the rehearsal or the road for the home as it is now. A newer question ends the one before; so does leaving
// the sheet.
import { useCallback, useEffect, useRef, useState } from 'react';
import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { FaultFinding, FaultRehearsal } from '../../planning/faults/fault-answer.ts';
import type { SearchAnswer } from '../../planning/search/search-answer.ts';
import type { HelpingChange } from '../../planning/search/what-helps.ts';
import type { StageRoads } from '../../planning/stages/stage-road.ts';
import type { Fault } from '../../shared/fault.ts';
import type { ChooseAsk, ChooseReply } from './choose-protocol.ts';
import { leaveSearchWorkers, readySearchWorkers, startAlone, startSearch } from './choose-workers.ts';

export type ChoosePart = 'search' | 'faults' | 'stages';

export interface ChooseRun {
  readonly working: boolean;
  /** The branch's own values that go into it. */
  readonly used: UsedShopValues | null;
  readonly doneFrac: number;
  readonly answer: SearchAnswer | null;
  readonly helps: readonly HelpingChange[] | null;
  readonly findings: readonly FaultFinding[];
  readonly rehearsal: FaultRehearsal | null;
  readonly roads: StageRoads | null;
  readonly faults: readonly Fault[];
  readonly failed: string | null;
}

const nothing: ChooseRun = {
  working: false,
  used: null,
  doneFrac: 0,
  answer: null,
  helps: null,
  findings: [],
  rehearsal: null,
  roads: null,
  faults: [],
  failed: null,
};

/** The hand rests when nothing has changed for this long [ms] (our choice). */
const restMs = 300;

/** The page's own clock, for whoever measures it (bench/search-browser.ts). */
const mark = (name: 'asked' | 'first' | 'settled') => performance.mark(`choose-${name}`);

function started(part: ChoosePart, ask: ChooseAsk, tell: (reply: ChooseReply) => void): () => void {
  if (part !== 'search') return startAlone(part, ask, tell);
  mark('asked');
  return startSearch(ask, (reply) => {
    if (reply.kind === 'answer') mark(reply.answer.settled ? 'settled' : 'first');
    tell(reply);
  });
}

function after(now: ChooseRun, reply: ChooseReply): ChooseRun {
  switch (reply.kind) {
    case 'own':
      return { ...now, used: reply.used };
    case 'progress':
      return { ...now, doneFrac: Math.max(now.doneFrac, reply.doneFrac) };
    case 'answer':
      return { ...now, answer: reply.answer, working: !reply.answer.settled };
    case 'helps':
      return { ...now, helps: reply.helps };
    case 'finding':
      return { ...now, findings: [...now.findings, reply.finding] };
    case 'rehearsal':
      return { ...now, findings: reply.rehearsal.findings, rehearsal: reply.rehearsal, working: false };
    case 'roads':
      return { ...now, roads: reply.roads, working: false };
    case 'refused':
      return { ...now, faults: reply.faults, working: false };
    case 'failed':
      return { ...now, failed: reply.say, working: false };
  }
}

export interface Choosing {
  readonly run: ChooseRun;
  /** Ends the work and keeps what is there. */
  readonly stop: () => void;
}

export function useChoose(part: ChoosePart, ask: ChooseAsk | null): Choosing {
  const [run, setRun] = useState<ChooseRun>(nothing);
  const [stopped, setStopped] = useState<ChooseAsk | null>(null);
  const asked = useRef(false);
  useEffect(() => {
    readySearchWorkers();
    return leaveSearchWorkers;
  }, []);
  useEffect(() => {
    if (!ask || stopped === ask) return;
    setRun({ ...nothing, working: true });
    let end: (() => void) | null = null;
    const timer = setTimeout(
      () => {
        end = started(part, ask, (reply) => setRun((now) => after(now, reply)));
      },
      asked.current ? restMs : 0,
    );
    asked.current = true;
    return () => {
      clearTimeout(timer);
      end?.();
    };
  }, [part, ask, stopped]);
  const stop = useCallback(() => {
    setStopped(ask);
    setRun((now) => ({ ...now, working: false }));
  }, [ask]);
  return { run, stop };
}
