// Answers settled states at once, so that the drawing follows the hand; also hands out the facts.
/// <reference lib="webworker" />
import type { Enclosure } from '../../physics/enclosure.ts';
import type { MaterialTable } from '../../physics/material.ts';
import { type BoxModel, buildModel, type SettledBox, settleBox, solveSteady } from '../../physics/simulate.ts';
import { factsBrief, factsWith } from './facts.ts';
import type { Conditions, SteadyReply, SteadyRequest } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const tell = (reply: SteadyReply) => self.postMessage(reply);

/** The box last asked about: while only the room moves, its model stands and its last state is a good start. */
let last: {
  readonly key: string;
  readonly materials: MaterialTable;
  readonly model: BoxModel;
  warm: SettledBox | undefined;
} | null = null;

/** All of an enclosure that its model is made from; room, animal and names are not. */
function modelKey({ room: _room, animal: _animal, name: _name, thermometers: _thermometers, ...made }: Enclosure) {
  return JSON.stringify(made);
}

function solved(enclosure: Enclosure, conditions: Conditions, materials: MaterialTable) {
  const key = modelKey(enclosure);
  if (last?.key !== key || last.materials !== materials)
    last = { key, materials, model: buildModel(enclosure, materials), warm: undefined };
  last.warm = settleBox(last.model, conditions, last.warm);
  return solveSteady(last.model, conditions, last.warm);
}

self.onmessage = ({ data }: MessageEvent<SteadyRequest>) => {
  if (data.kind === 'facts') {
    tell({ kind: 'facts', seq: data.seq, facts: factsBrief(data.shopValues) });
    return;
  }
  const startedMs = performance.now();
  try {
    const answer = solved(data.enclosure, data.conditions, factsWith(data.shopValues).materials);
    tell({ kind: 'steady', seq: data.seq, answer, tookMs: performance.now() - startedMs });
  } catch (error) {
    last = null;
    tell({ kind: 'failed', seq: data.seq, say: error instanceof Error ? error.message : String(error) });
  }
};
