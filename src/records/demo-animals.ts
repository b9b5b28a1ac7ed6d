// Animals of the demonstration shop, all invented: thirteen enclosures, one animal each, with things that stand out.
import { randomUUID } from 'node:crypto';
import type { Transaction } from 'kysely';
import { addDays } from '../animal/calendar.ts';
import type { EventBodies, EventKind } from '../animal/event.ts';
import type { RegisterEntry } from '../animal/register.ts';
import { insertEvent } from './animal-events.ts';
import { loadCareFacts } from './animal-facts.ts';
import { branchFacts, insertAnimal, insertFacts, putWhereabouts, type Writer } from './animals.ts';
import type { Tables } from './schema.ts';

type Entry = { readonly [K in EventKind]: readonly [daysAgo: number, kind: K, body: EventBodies[K]] }[EventKind];

interface DemoAnimal {
  readonly name: string;
  readonly speciesId: string;
  readonly sex: string;
  readonly daysHere: number;
  readonly lengthCm: number;
  readonly massG: number;
  readonly prey: string;
  readonly register?: RegisterEntry;
  readonly entries?: readonly Entry[];
}

const inQuarantine = (daysAgo: number, days: number): Entry => [
  daysAgo,
  'quarantine',
  { step: 'start', why: 'arrival', where: 'back room', clearBy: 'time', days, tests: '' },
];

const demoAnimals: readonly DemoAnimal[] = [
  { name: 'Juniper', speciesId: 'corn', sex: 'female', daysHere: 200, lengthCm: 112, massG: 420, prey: 'mouse-adult' },
  { name: 'Sorrel', speciesId: 'corn', sex: 'male', daysHere: 60, lengthCm: 48, massG: 32, prey: 'mouse-fuzzy' },
  {
    name: 'Fennel',
    speciesId: 'royal',
    sex: 'female',
    daysHere: 300,
    lengthCm: 118,
    massG: 1290,
    prey: 'rat-small',
    entries: [[3, 'slough', { stage: 'cloudy' }]],
  },
  {
    name: 'Teasel',
    speciesId: 'royal',
    sex: 'unknown',
    daysHere: 20,
    lengthCm: 62,
    massG: 210,
    prey: 'rat-pink',
    register: { supplierName: '' },
    entries: [inQuarantine(20, 90)],
  },
  {
    name: 'Bracken',
    speciesId: 'western-hognose',
    sex: 'male',
    daysHere: 120,
    lengthCm: 41,
    massG: 88,
    prey: 'mouse-hopper',
    entries: [[40, 'weighing', { massG: 99 }]],
  },
  {
    name: 'Clover',
    speciesId: 'california-kingsnake',
    sex: 'female',
    daysHere: 90,
    lengthCm: 84,
    massG: 210,
    prey: 'mouse-small',
  },
  {
    name: 'Yarrow',
    speciesId: 'milk',
    sex: 'male',
    daysHere: 150,
    lengthCm: 66,
    massG: 120,
    prey: 'mouse-hopper',
    entries: [[12, 'mites', { seen: true, where: 'palm and water' }]],
  },
  {
    name: 'Mallow',
    speciesId: 'boa',
    sex: 'female',
    daysHere: 45,
    lengthCm: 132,
    massG: 1450,
    prey: 'rat-small',
    entries: [inQuarantine(45, 180)],
  },
  { name: 'Tansy', speciesId: 'garter', sex: 'female', daysHere: 110, lengthCm: 58, massG: 74, prey: 'fish-whole' },
  { name: 'Sedge', speciesId: 'house', sex: 'male', daysHere: 80, lengthCm: 62, massG: 48, prey: 'mouse-hopper' },
  {
    name: 'Thrift',
    speciesId: 'rosy',
    sex: 'female',
    daysHere: 210,
    lengthCm: 71,
    massG: 240,
    prey: 'mouse-small',
    entries: [
      [
        5,
        'treatment',
        { step: 'start', what: 'Wound care, as the vet wrote', amount: 'daily', vet: 'practice on file' },
      ],
    ],
  },
  { name: 'Burnet', speciesId: 'spotted', sex: 'male', daysHere: 95, lengthCm: 88, massG: 390, prey: 'rat-weaner' },
  // Released yesterday by desk/demo-placements.ts: twelve stay.
  { name: 'Bryony', speciesId: 'corn', sex: 'female', daysHere: 140, lengthCm: 118, massG: 545, prey: 'mouse-adult' },
];

/** Puts them down in the transaction that makes the shop. */
export async function fillDemoAnimals(tx: Transaction<Tables>, branchId: string, now: Date): Promise<void> {
  const { shopId } = await branchFacts(tx, branchId);
  const writer: Writer = { branchId, at: now, by: 'demonstration' };
  const today = now.toISOString().slice(0, 10);
  const steps = loadCareFacts().facts.examination.map((step) => step.id);
  for (const [index, animal] of demoAnimals.entries()) {
    const id = randomUUID();
    const enclosure = `A${index + 1}`;
    await insertAnimal(tx, id, shopId, writer);
    await insertFacts(tx, id, registerOf(animal, today), '', writer);
    await putWhereabouts(tx, id, { branchId, enclosure, gone: false });
    for (const [daysAgo, kind, body] of entriesOf(animal, enclosure, branchId, steps)) {
      const on = addDays(today, -daysAgo);
      const event = { id: randomUUID(), animalId: id, kind, on, at: new Date(`${on}T09:00:00Z`), body };
      await insertEvent(tx, { ...event, corrects: null, reason: '', clientKey: null }, writer);
    }
  }
}

function registerOf(animal: DemoAnimal, today: string): RegisterEntry {
  return {
    speciesId: animal.speciesId,
    callName: animal.name,
    sex: animal.sex,
    hatched: 'unknown',
    supplierName: 'Invented Breeder, Thistle Lane',
    originCountry: 'United Kingdom',
    acquiredOn: addDays(today, -animal.daysHere),
    acquiredHow: 'bought',
    bred: 'bred',
    ...animal.register,
  };
}

function entriesOf(
  animal: DemoAnimal,
  enclosure: string,
  branchId: string,
  steps: readonly string[],
): readonly Entry[] {
  const meal = { preyId: animal.prey, preyMassG: null, count: 1, outcome: 'taken' } as const;
  const well = {
    state: 'well',
    water: true,
    locked: true,
    droppings: false,
    warmC: null,
    coolC: null,
    rhPct: null,
    note: '',
  } as const;
  const answers = Object.fromEntries(steps.map((step) => [step, []]));
  const usual: readonly Entry[] = [
    [animal.daysHere, 'movement', { toPlace: enclosure, toBranchId: branchId, why: 'arrival' }],
    [30, 'weighing', { massG: animal.massG }],
    [29, 'length', { totalLengthCm: animal.lengthCm, snoutVentMm: null, errorMm: 25, how: 'trace' }],
    [28, 'feeding', meal],
    [18, 'feeding', meal],
    [8, 'feeding', meal],
    [2, 'examination', { answers, massG: animal.massG, outline: 'good', note: '' }],
    // One enclosure was forgotten yesterday and the day before, so that a missed round is seen.
    [enclosure === 'A9' ? 3 : 1, 'round', well],
  ];
  return [...usual, ...(animal.entries ?? [])];
}
