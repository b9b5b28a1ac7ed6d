// The search, the rehearsal or the road for the home as it is now. A newer question ends the workers at once; so does
// leaving the sheet.
import { useCallback, useEffect, useState } from 'react';
import type { FaultFinding, FaultRehearsal } from '../../planning/faults/fault-answer.ts';
import type { SearchAnswer } from '../../planning/search/search-answer.ts';
import type { HelpingChange } from '../../planning/search/what-helps.ts';
import type { StageRoads } from '../../planning/stages/stage-road.ts';
import type { Fault } from '../../shared/fault.ts';
import type { ChooseAsk, ChooseReply, ChooseRequest } from './choose-protocol.ts';

export type ChoosePart = 'search' | 'faults' | 'stages';

export interface ChooseRun {
  readonly working: boolean;
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

const newWorker = () => new Worker(new URL('./choose-worker.ts', import.meta.url), { type: 'module' });

/** Starts the work and gives the way to end it. */
function started(part: ChoosePart, ask: ChooseAsk, tell: (reply: ChooseReply) => void): () => void {
  const lead = newWorker();
  lead.onmessage = ({ data }: MessageEvent<ChooseReply>) => tell(data);
  lead.onerror = (event) => tell({ kind: 'failed', say: event.message });
  if (part !== 'search') {
    lead.postMessage({ kind: part, ask } satisfies ChooseRequest);
    return () => lead.terminate();
  }
  // One helper: the second core. More would only warm the machine of a shop.
  const cores = navigator.hardwareConcurrency || 1;
  const helper = cores > 1 ? newWorker() : null;
  const channel = new MessageChannel();
  helper?.postMessage({ kind: 'help' } satisfies ChooseRequest, [channel.port1]);
  const request: ChooseRequest = { kind: 'search', ask, helpers: helper ? 1 : 0 };
  lead.postMessage(request, helper ? [channel.port2] : []);
  return () => {
    lead.terminate();
    helper?.terminate();
  };
}

function after(now: ChooseRun, reply: ChooseReply): ChooseRun {
  switch (reply.kind) {
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
  useEffect(() => {
    if (!ask || stopped === ask) return;
    setRun({ ...nothing, working: true });
    let end: (() => void) | null = null;
    const timer = setTimeout(() => {
      end = started(part, ask, (reply) => setRun((now) => after(now, reply)));
    }, restMs);
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
