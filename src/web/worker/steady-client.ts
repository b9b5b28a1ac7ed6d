// Asks the steady worker; while it is busy only the newest question waits, so that the latest change wins.
import type { SteadyAnswer } from '../../physics/answer.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Conditions, FactsBrief, SteadyReply, SteadyRequest } from './protocol.ts';

export interface SteadyOutcome {
  readonly enclosure: Enclosure;
  readonly conditions: Conditions;
  readonly answer: SteadyAnswer | null;
  /** Set when the model could not answer. */
  readonly failed: string | null;
  /** When the question was asked (performance.now) [ms]. */
  readonly askedMs: number;
}

export interface SteadyClient {
  readonly ask: (enclosure: Enclosure, conditions: Conditions, tell: (outcome: SteadyOutcome) => void) => void;
  readonly facts: () => Promise<FactsBrief>;
}

interface Question {
  readonly seq: number;
  readonly enclosure: Enclosure;
  readonly conditions: Conditions;
  readonly askedMs: number;
  readonly tell: (outcome: SteadyOutcome) => void;
}

export function createSteadyClient(): SteadyClient {
  const worker = new Worker(new URL('./steady-worker.ts', import.meta.url), { type: 'module' });
  let seq = 0;
  let busy: Question | null = null;
  let waiting: Question | null = null;
  let factsPromise: Promise<FactsBrief> | null = null;
  let tellFacts: (facts: FactsBrief) => void = () => {};
  const send = (request: SteadyRequest) => worker.postMessage(request);
  const next = () => {
    busy = waiting;
    waiting = null;
    if (busy) send({ kind: 'steady', seq: busy.seq, enclosure: busy.enclosure, conditions: busy.conditions });
  };
  worker.onmessage = ({ data }: MessageEvent<SteadyReply>) => {
    if (data.kind === 'facts') {
      tellFacts(data.facts);
      return;
    }
    const asked = busy;
    if (!asked || asked.seq !== data.seq) return;
    next();
    const { enclosure, conditions, askedMs } = asked;
    const answer = data.kind === 'steady' ? data.answer : null;
    asked.tell({ enclosure, conditions, askedMs, answer, failed: data.kind === 'failed' ? data.say : null });
  };
  return {
    ask: (enclosure, conditions, tell) => {
      waiting = { seq: ++seq, enclosure, conditions, tell, askedMs: performance.now() };
      if (!busy) next();
    },
    facts: () => {
      factsPromise ??= new Promise((resolve) => {
        tellFacts = resolve;
        send({ kind: 'facts' });
      });
      return factsPromise;
    },
  };
}

let shared: SteadyClient | null = null;

/** The one steady worker of this page, started when first needed. */
export function steadyClient(): SteadyClient {
  shared ??= createSteadyClient();
  return shared;
}
