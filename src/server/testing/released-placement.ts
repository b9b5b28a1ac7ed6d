// An enquiry, an animal and a placement whose animal has left, put down the way the desk does, for tests of what follows.
import { randomUUID } from 'node:crypto';
import { addPlacementEvent, insertPlacement } from '../../records/placements.ts';
import type { Db } from '../../records/schema.ts';
import type { App } from '../types.ts';
import { exampleDocument } from './example-document.ts';

export interface ReleasedForTests {
  readonly enquiryId: string;
  readonly animalId: string;
  readonly placementId: string;
}

/** How the doors are reached: in this process, or over the network. */
export type Post = (url: string, payload: object) => Promise<{ id: string }>;

export const postTo =
  (app: App): Post =>
  async (url, payload) =>
    (await app.inject({ method: 'POST', url, payload })).json();

export async function releasedPlacement(
  post: Post,
  db: Db,
  branchId: string,
  choice: {
    readonly at: Date;
    readonly arrivedOn: string;
    readonly name?: string;
    readonly label?: string;
    readonly release?: boolean;
    /** Where the home is said to be. */
    readonly place?: string;
    /** What the enquiry holds, where it is to be another home than the usual one. */
    readonly document?: object;
  },
): Promise<ReleasedForTests> {
  const document = (choice.document ?? exampleDocument()) as { answers: object };
  const labelled = {
    ...document,
    answers: { ...document.answers, label: choice.label ?? choice.name ?? 'Ümläut, flat above' },
  };
  const enquiry = await post('/api/enquiries', { document: labelled });
  const animal = await post('/api/animals', {
    values: {
      speciesId: 'corn',
      callName: choice.name ?? 'Jürgen',
      sex: 'male',
      hatched: 'unknown',
      supplierName: 'Invented Breeder',
      originCountry: 'United Kingdom',
      acquiredOn: choice.arrivedOn,
      acquiredHow: 'bought',
      bred: 'bred',
    },
    enclosure: 'A1',
    quarantine: null,
  });
  for (const [kind, body] of [
    ['weighing', { massG: 420 }],
    ['length', { totalLengthCm: 100, snoutVentMm: null, errorMm: 20, how: 'trace' }],
  ] as const)
    await post(`/api/animals/${animal.id}/entries`, { kind, on: choice.arrivedOn, body });
  const writer = { at: choice.at, by: 'tester' };
  const placementId = await insertPlacement(db, { branchId, enquiryId: enquiry.id, animalId: animal.id }, writer);
  if (choice.place !== undefined)
    await db.transaction().execute((tx) => {
      const body = { requirement: 'home-place', answer: 'met', text: '', place: choice.place, years: null };
      return addPlacementEvent(tx, placementId, { kind: 'statement', body, token: randomUUID() }, writer);
    });
  // As src/desk/release-animal.ts writes it; the home of such a test was neither planned nor proven.
  const left = {
    outcome: 'sold',
    enquiryVersion: 1,
    planResultId: null,
    proofResultId: null,
    places: [],
    requirements: [],
  };
  if (choice.release !== false)
    await db
      .transaction()
      .execute((tx) =>
        addPlacementEvent(tx, placementId, { kind: 'released', body: left, token: randomUUID() }, writer),
      );
  return { enquiryId: enquiry.id, animalId: animal.id, placementId };
}
