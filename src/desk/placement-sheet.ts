// The thread of a placement as a screen needs it: plan and proof by their verdicts, days as text. The whole kept answers
// are for those who print or plan from them (placement-thread.ts).
import { lastOf } from '../animal/event.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryTitle } from './find-enquiries.ts';
import { lookingOnly, mayOverride } from './placement-roles.ts';
import type { PlacementThread } from './placement-thread.ts';

export function placementSheet(thread: PlacementThread, desk: DeskContext) {
  const { placement, enquiry, animal, around, plan, proof, erasure } = thread;
  const looked = lastOf(animal.events, 'examination');
  return {
    ...placement,
    at: placement.at.toISOString(),
    state: thread.state,
    today: around.today,
    deskPlace: around.place,
    enquiry: {
      id: enquiry.id,
      version: enquiry.version,
      title: enquiryTitle(enquiry),
      createdAt: enquiry.createdAt.toISOString(),
      updatedAt: enquiry.updatedAt.toISOString(),
      by: enquiry.createdBy,
      document: enquiry.document,
    },
    erasure: erasure && { at: erasure.at.toISOString(), by: erasure.by, reason: erasure.reason },
    enclosure: thread.enclosure,
    plan: plan && {
      id: plan.id,
      verdict: plan.answer.verdict,
      current: plan.enquiryVersion === enquiry.version,
      at: plan.at.toISOString(),
      by: plan.by,
    },
    proof: proof && {
      id: proof.id,
      verdict: proof.answer.verdict,
      current: proof.current,
      at: proof.at.toISOString(),
      by: proof.by,
    },
    animal: {
      id: animal.row.id,
      callName: animal.entry.callName ?? '',
      speciesId: animal.species.id,
      stage: animal.stage,
      massG: animal.massG,
      totalLengthCm: animal.totalLengthCm,
      enclosure: animal.row.enclosure,
      gone: animal.row.gone,
      lookedOver: looked && { on: looked.on, by: looked.by },
    },
    fitness: thread.fitness,
    register: thread.register,
    law: thread.law,
    ageYears: thread.ageYears,
    release: thread.release,
    packPrint: thread.packPrint && { ...thread.packPrint, at: thread.packPrint.at.toISOString() },
    events: thread.events.map((event) => ({ ...event, at: event.at.toISOString() })),
    mayAct: lookingOnly(desk).length === 0,
    mayOverride: mayOverride(desk),
  };
}

export type PlacementSheet = ReturnType<typeof placementSheet>;
