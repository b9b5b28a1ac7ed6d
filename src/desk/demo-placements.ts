// Two placements of the demonstration shop, made by the actions that a desk uses: one was released yesterday on a
// manager's word, one stands open with something left to do. Nobody in them is real.
import { randomUUID } from 'node:crypto';
import type { RequirementId } from '../proving/release/requirement.ts';
import { placementsOfBranch } from '../records/placements.ts';
import type { Result } from '../shared/result.ts';
import type { DeskContext } from './desk-context.ts';
import { enquiryTitle, listEnquiries } from './find-enquiries.ts';
import { listAnimals } from './list-animals.ts';
import { openPlacement } from './open-placement.ts';
import { overrideRequirement } from './override-requirement.ts';
import { releaseAnimal } from './release-animal.ts';
import { type NewStatement, stateRequirement } from './state-requirement.ts';

const dayMs = 86_400_000;

type Said = Partial<NewStatement> & { readonly requirement: RequirementId };

const alwaysSaid: readonly Said[] = [
  { requirement: 'home-place', place: 'england' },
  { requirement: 'buyer-age', years: 16, text: 'known to us' },
  { requirement: 'cautions' },
];
const atHandover: readonly Said[] = [
  { requirement: 'vet', text: 'Invented practice, Mill Street; sees snakes on Tuesdays' },
  { requirement: 'information', text: 'pack gone through at the counter' },
];

/** Does nothing where there are placements already. */
export async function fillDemoPlacements(desk: DeskContext): Promise<void> {
  if ((await placementsOfBranch(desk.db, desk.actor.branchId)).length > 0) return;
  const yesterday = new Date(desk.clock.now().getTime() - dayMs);
  const then: DeskContext = {
    ...desk,
    actor: { ...desk.actor, name: 'demonstration', role: 'manager' },
    clock: { now: () => yesterday },
  };
  const released = await opened(then, 'Bryony', 'Corn snake, flat above the bakery');
  await say(then, released, [...alwaysSaid, ...atHandover]);
  await override(then, released, 'home-proven', 'We read it on the spot for four nights; the logger file was lost.');
  await override(then, released, 'register', 'The photograph is taken when it is handed over.');
  need(await releaseAnimal(then, released, { outcome: 'sold', token: randomUUID() }));
  const open = await opened({ ...then, clock: desk.clock }, 'Clover', 'Hatchling kingsnake, first snake of the house');
  await say({ ...then, clock: desk.clock }, open, alwaysSaid);
}

async function opened(desk: DeskContext, callName: string, title: string): Promise<string> {
  const { animals } = await listAnimals(desk, { all: true });
  const animal = animals.find((one) => one.callName === callName);
  const enquiry = (await listEnquiries(desk)).find((row) => enquiryTitle(row) === title);
  if (!animal || !enquiry) throw new Error(`the demonstration has no ${callName} or no "${title}"`);
  return need(await openPlacement(desk, { enquiryId: enquiry.id, animalId: animal.id })).id;
}

async function say(desk: DeskContext, placementId: string, said: readonly Said[]): Promise<void> {
  const plain = { answer: 'yes', text: '', place: null, years: null } as const;
  for (const one of said) need(await stateRequirement(desk, placementId, { ...plain, token: randomUUID(), ...one }));
}

async function override(desk: DeskContext, placementId: string, requirement: RequirementId, reason: string) {
  need(await overrideRequirement(desk, placementId, { requirement, reason, takeBack: false, token: randomUUID() }));
}

/** The demonstration is ours: what does not go through is our own mistake. */
function need<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(`the demonstration: ${result.faults.map((fault) => fault.say).join(' ')}`);
}
