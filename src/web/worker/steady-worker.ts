// Answers settled states at once, so that the drawing follows the hand; also hands out the facts.
/// <reference lib="webworker" />
import { buildModel, solveSteady } from '../../physics/simulate.ts';
import { facts, factsBrief } from './facts.ts';
import type { SteadyReply, SteadyRequest } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (reply: SteadyReply) => self.postMessage(reply);

self.onmessage = ({ data }: MessageEvent<SteadyRequest>) => {
  if (data.kind === 'facts') {
    tell({ kind: 'facts', facts: factsBrief() });
    return;
  }
  const startedMs = performance.now();
  try {
    const model = buildModel(data.enclosure, facts.materials);
    const answer = solveSteady(model, data.conditions);
    tell({ kind: 'steady', seq: data.seq, answer, tookMs: performance.now() - startedMs });
  } catch (error) {
    tell({ kind: 'failed', seq: data.seq, say: error instanceof Error ? error.message : String(error) });
  }
};
