// An animal with a sound record and a whole register, taken in through the doors as a desk would.
import { allFacts } from '../../records/animal-facts.ts';
import { exampleDocument } from './example-document.ts';

/** Sends to a door and gives back the answer; throws when it is refused. */
export type Send = (path: string, body: object) => Promise<Record<string, unknown>>;

/** The smallest picture there is: one white point. */
export const onePointPng =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII=';

/** @param daysAgo gives the day so many days before today  @returns id of the animal */
export async function takeInFit(send: Send, daysAgo: (days: number) => string, part: object = {}): Promise<string> {
  const values = {
    speciesId: 'corn',
    callName: 'Juniper',
    sex: 'female',
    hatched: '2024-07-01',
    supplierName: 'Invented Supplier',
    originCountry: 'United Kingdom',
    acquiredOn: daysAgo(60),
    acquiredHow: 'bought',
    bred: 'bred',
    ...part,
  };
  const { id } = await send('/api/animals', { values, enclosure: 'A1', quarantine: null });
  const entry = async (kind: string, days: number, body: object) =>
    await send(`/api/animals/${id}/entries`, { kind, on: daysAgo(days), at: `${daysAgo(days)}T10:00:00Z`, body });
  for (const days of [30, 20, 9])
    await entry('feeding', days, { preyId: 'mouse-adult', preyMassG: 24, count: 1, outcome: 'taken' });
  for (const [days, massG] of [
    [25, 552],
    [3, 560],
  ] as const)
    await entry('weighing', days, { massG });
  await entry('length', 25, { totalLengthCm: 115, snoutVentMm: null, errorMm: null, how: 'ruler' });
  await send(`/api/animals/${id}/photos`, { data: onePointPng, of: 'whole' });
  const answers = Object.fromEntries(allFacts().care.examination.map((step) => [step.id, []]));
  await send(`/api/animals/${id}/examination`, { answers, massG: 560, outline: '', note: '' });
  return String(id);
}

/** An enquiry that is answered whole, for a home that holds its drawing's requirements. */
export function answeredDocument(label: string, enclosurePart: object = {}): Record<string, unknown> {
  const { enclosure } = exampleDocument() as {
    enclosure: { room: Record<'winter' | 'summer', Record<string, number>> };
  };
  const { winter, summer } = enclosure.room;
  const answers = {
    label,
    speciesId: 'corn',
    stage: 'adult',
    totalLengthM: 1.15,
    massG: 560,
    winterLowC: winter.lowC,
    winterHighC: winter.highC,
    summerLowC: summer.lowC,
    summerHighC: summer.highC,
    rhPct: 55,
    summerRhPct: null,
    rhMeasured: true,
    sun: 'none',
    startFrom: null,
    cautionsExplained: true,
    standardId: null,
  };
  return { format: 'warmstead-enquiry', version: 1, answers, enclosure: { ...enclosure, ...enclosurePart } };
}
