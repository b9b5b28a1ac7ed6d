// Answers settled states at once, so that the drawing follows the hand; also hands out the facts.
/// <reference lib="webworker" />
import type { Enclosure } from '../../physics/enclosure.ts';
import { type BoxModel, buildModel, type SettledBox, settleBox, solveSteady } from '../../physics/simulate.ts';
import { facts, factsBrief } from './facts.ts';
import type { Conditions, SteadyReply, SteadyRequest } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (reply: SteadyReply) => self.postMessage(reply);

/** The box last asked about: while only the room moves, its model stands and its last state is a good start. */
let last: { readonly key: string; readonly model: BoxModel; warm: SettledBox | undefined } | null = null;

/** All of an enclosure that its model is made from; room, animal and names are not. */
function modelKey({ room: _room, animal: _animal, name: _name, thermometers: _thermometers, ...made }: Enclosure) {
  return JSON.stringify(made);
}

function solved(enclosure: Enclosure, conditions: Conditions) {
  const key = modelKey(enclosure);
  if (last?.key !== key) last = { key, model: buildModel(enclosure, facts.materials), warm: undefined };
  last.warm = settleBox(last.model, conditions, last.warm);
  return solveSteady(last.model, conditions, last.warm);
}

self.onmessage = ({ data }: MessageEvent<SteadyRequest>) => {
  if (data.kind === 'facts') {
    tell({ kind: 'facts', facts: factsBrief() });
    return;
  }
  const startedMs = performance.now();
  try {
    const answer = solved(data.enclosure, data.conditions);
    tell({ kind: 'steady', seq: data.seq, answer, tookMs: performance.now() - startedMs });
  } catch (error) {
    last = null;
    tell({ kind: 'failed', seq: data.seq, say: error instanceof Error ? error.message : String(error) });
  }
};
