// Asks the steady worker; while it is busy only the newest question waits, so that the latest change wins.

import type { ShopValue } from '../../husbandry/shop-value.ts';
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
  readonly ask: (
    enclosure: Enclosure,
    conditions: Conditions,
    shopValues: readonly ShopValue[],
    tell: (outcome: SteadyOutcome) => void,
  ) => void;
  readonly facts: (shopValues: readonly ShopValue[]) => Promise<FactsBrief>;
}

interface Question {
  readonly seq: number;
  readonly enclosure: Enclosure;
  readonly conditions: Conditions;
  readonly shopValues: readonly ShopValue[];
  readonly askedMs: number;
  readonly tell: (outcome: SteadyOutcome) => void;
}

export function createSteadyClient(): SteadyClient {
  const worker = new Worker(new URL('./steady-worker.ts', import.meta.url), { type: 'module' });
  let seq = 0;
  let busy: Question | null = null;
  let waiting: Question | null = null;
  let factsSeq = 0;
  const tellFacts = new Map<number, (facts: FactsBrief) => void>();
  let asked: { readonly of: readonly ShopValue[]; readonly facts: Promise<FactsBrief> } | null = null;
  const send = (request: SteadyRequest) => worker.postMessage(request);
  const next = () => {
    busy = waiting;
    waiting = null;
    if (!busy) return;
    const { enclosure, conditions, shopValues } = busy;
    send({ kind: 'steady', seq: busy.seq, enclosure, conditions, shopValues });
  };
  worker.onmessage = ({ data }: MessageEvent<SteadyReply>) => {
    if (data.kind === 'facts') {
      tellFacts.get(data.seq)?.(data.facts);
      tellFacts.delete(data.seq);
      return;
    }
    const question = busy;
    if (!question || question.seq !== data.seq) return;
    next();
    const { enclosure, conditions, askedMs } = question;
    const answer = data.kind === 'steady' ? data.answer : null;
    question.tell({ enclosure, conditions, askedMs, answer, failed: data.kind === 'failed' ? data.say : null });
  };
  return {
    ask: (enclosure, conditions, shopValues, tell) => {
      waiting = { seq: ++seq, enclosure, conditions, shopValues, tell, askedMs: performance.now() };
      if (!busy) next();
    },
    facts: (shopValues) => {
      if (asked?.of === shopValues) return asked.facts;
      const mine = ++factsSeq;
      const facts = new Promise<FactsBrief>((resolve) => {
        tellFacts.set(mine, resolve);
        send({ kind: 'facts', seq: mine, shopValues });
      });
      asked = { of: shopValues, facts };
      return facts;
    },
  };
}

let shared: SteadyClient | null = null;

/** The one steady worker of this page, started when first needed. */
export function steadyClient(): SteadyClient {
  shared ??= createSteadyClient();
  return shared;
}
