// One row or more in every table that is kept, through the functions that the program itself uses.
import { createHash, randomUUID } from 'node:crypto';
import { insertEvent } from '../animal-events.ts';
import { insertPhoto } from '../animal-photos.ts';
import { insertAnimal, insertFacts, putWhereabouts } from '../animals.ts';
import { insertEnquiry, updateEnquiry } from '../enquiries.ts';
import { everyHandReadingOf, insertHandReading, standHandReading } from '../hand-readings.ts';
import { insertInstrument, insertInstrumentCheck } from '../instruments.ts';
import { insertLiveReadings, insertLiveSource } from '../live-sources.ts';
import { insertOverlay, withdrawStanding } from '../overlays.ts';
import { keepPackGiven } from '../packs-given.ts';
import { addPlacementEvent, insertPlacement } from '../placements.ts';
import { insertPlanResult, standPlan } from '../plan-results.ts';
import { insertProofResult, insertReadingFile, withdrawReadingFile } from '../readings.ts';
import type { Db } from '../schema.ts';
import { firstBranch } from '../shops.ts';

export interface Filled {
  readonly branchId: string;
  readonly enquiryId: string;
  readonly animalId: string;
  readonly placementId: string;
  readonly sourceId: string;
}

const at = new Date('2026-01-15T09:00:00Z');
const writer = { at, by: 'tester' };

export async function fillEveryTable(db: Db): Promise<Filled> {
  const { branchId } = await firstBranch(db, { shopName: 'Test shop', branchName: 'Counter', at });
  const enquiryId = randomUUID();
  await insertEnquiry(db, { id: enquiryId, branchId, document: { n: 1, note: 'ä ß "quoted" \\ 1.50' }, ...writer });
  await updateEnquiry(db, { id: enquiryId, branchId, fromVersion: 1, document: { n: 2 }, ...writer });
  const animalId = await filledAnimal(db, branchId);
  const placementId = await insertPlacement(db, { branchId, enquiryId, animalId }, writer);
  await db
    .transaction()
    .execute((tx) =>
      addPlacementEvent(tx, placementId, { kind: 'statement', body: { said: 'yes' }, token: randomUUID() }, writer),
    );
  const versions = { enquiryId, enquiryVersion: 2, modelVersion: 'm', dataVersion: 'd' };
  const planId = randomUUID();
  await insertPlanResult(db, { id: planId, answer: { temp: 31.25, third: 1 / 3 }, ...versions, ...writer });
  await keepPackGiven(db, {
    placementId,
    state: 'released',
    said: [{ title: 'Home', lines: ['a vet of the buyer'] }],
    bytes: Buffer.from('%PDF-1.7 of a buyer'),
    language: 'en',
    temperature: 'C',
    length: 'cm',
    mass: 'g',
    ...writer,
  });
  await standPlan(db, planId, { counts: false, ...writer });
  await insertProofResult(db, { answer: { ok: true }, inputs: {}, ...versions }, writer);
  const sourceId = await filledReadings(db, branchId, enquiryId);
  const overlay = { path: 'policy.standardId', value: { value: 'x' }, was: { value: null }, why: 'a reason' };
  const overlayId = await insertOverlay(db, overlay, { branchId, ...writer });
  await withdrawStanding(db, overlayId, 'no longer', { branchId, ...writer });
  return { branchId, enquiryId, animalId, placementId, sourceId };
}

async function filledAnimal(db: Db, branchId: string): Promise<string> {
  const animalId = randomUUID();
  const { shop_id: shopId } = await db.selectFrom('branch').select('shop_id').executeTakeFirstOrThrow();
  const own = { branchId, ...writer };
  await insertAnimal(db, animalId, shopId, own);
  await insertFacts(db, animalId, { speciesId: 'corn', name: 'Ember' } as never, '', own);
  await insertEvent(
    db,
    {
      id: randomUUID(),
      animalId,
      kind: 'weight',
      on: '2026-01-15',
      at,
      body: { massG: 410.5 },
      corrects: null,
      reason: '',
      clientKey: null,
    },
    own,
  );
  await putWhereabouts(db, animalId, { branchId, enclosure: 'A1', gone: false });
  const bytes = Buffer.from('not a picture, but bytes');
  await insertPhoto(db, animalId, { mediaType: 'image/png', bytes }, own);
  return animalId;
}

const hashOf = (bytes: Buffer) => ({ sha256: createHash('sha256').update(bytes).digest('hex') });

async function filledReadings(db: Db, branchId: string, enquiryId: string): Promise<string> {
  const instrumentId = await insertInstrument(db, branchId, 'Probe thermometer', writer);
  await insertInstrumentCheck(db, instrumentId, { quantity: 'tempC', how: 'ice', truth: 0, shown: 0.4 }, writer);
  const bytes = Buffer.from('time,temp\n2026-01-01T00:00,25.5\n');
  const file = { enquiryId, name: 'log.csv', bytes, hints: {}, ...hashOf(bytes) };
  const fileId = await insertReadingFile(db, file, writer);
  await withdrawReadingFile(db, { id: fileId, hints: {} }, 'the wrong home', writer);
  const typed = { enquiryId, linkId: null, clientKey: 'k1', atS: 1_768_467_600, valuesC: { 'warm-air': 28.4 } };
  await insertHandReading(db, typed as never, writer);
  const [reading] = await everyHandReadingOf(db, enquiryId);
  await standHandReading(db, reading?.id ?? '', { counts: false, why: 'the wrong shelf' }, writer);
  const source = { enquiryId, label: 'probe', place: 'warm-air', quantity: 'tempC', intervalS: 60 };
  const sourceId = await insertLiveSource(
    db,
    { ...source, topic: null, valueKey: null, instrumentId: null } as never,
    createHash('sha256').update(randomUUID()).digest('hex'),
    writer,
  );
  const readings = [0, 1, 2].map((m) => ({ measuredAt: new Date(at.getTime() + m * 60_000), value: 28 + m / 10 }));
  await insertLiveReadings(db, sourceId, readings, at);
  return sourceId;
}
