// Subjects of packs for tests: a ready enclosure, and an animal whose record is written here. Figures are computed.
import { readFileSync } from 'node:fs';
import { addDays } from '../../../animal/calendar.ts';
import type { AnimalEvent, EventBodies, EventKind } from '../../../animal/event.ts';
import { allFacts } from '../../../records/animal-facts.ts';
import type { PlanJob } from '../../plan-job.ts';
import { type PackFigures, runPackJob } from '../pack-job.ts';
import type { PackSubject } from '../pack-subject.ts';

const today = '2026-01-15';

function entry<K extends EventKind>(index: number, daysAgo: number, kind: K, body: EventBodies[K]): AnimalEvent {
  const on = addDays(today, -daysAgo);
  return { id: `entry-${index}`, kind, on, at: `${on}T09:00:00Z`, body, by: 'tester' } as unknown as AnimalEvent;
}

export function exampleJob(example: string, change: (enclosure: never) => object = (enclosure) => enclosure): PlanJob {
  const file = new URL(`../../../../data/examples/${example}.json`, import.meta.url);
  return { enclosure: change(JSON.parse(readFileSync(file, 'utf8')) as never), members: 12 };
}

export function exampleFigures(job: PlanJob): PackFigures {
  const made = runPackJob({ kind: 'pack', plan: job });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
}

/** The animal of the enclosure with a record: meals, masses, a slough, an examination without signs. */
export function exampleSubject({ enclosure }: PackFigures, change: Partial<PackSubject> = {}): PackSubject {
  const { facts, care } = allFacts();
  const { speciesId, stage, totalLengthM, massG } = enclosure.animal!;
  const meal = { preyId: 'mouse-small', preyMassG: null, count: 1, outcome: 'taken' } as const;
  const answers = Object.fromEntries(care.examination.map((step) => [step.id, []]));
  const events = [
    entry(1, 200, 'movement', { toPlace: 'A1', toBranchId: 'b', why: 'arrival' }),
    entry(2, 35, 'slough', { stage: 'complete' }),
    entry(3, 30, 'weighing', { massG: massG ?? 100 }),
    entry(4, 29, 'length', { totalLengthCm: totalLengthM * 100, snoutVentMm: null, errorMm: 20, how: 'trace' }),
    entry(5, 26, 'feeding', meal),
    entry(6, 16, 'feeding', { ...meal, outcome: 'refused' }),
    entry(7, 6, 'feeding', meal),
    entry(8, 2, 'examination', { answers, massG, outline: 'good', note: '' }),
  ];
  return {
    printedOn: today,
    shopName: 'Thistle Yard (invented)',
    branchName: 'Counter',
    places: ['england'],
    southern: false,
    animal: {
      registerId: '3f2a9c10-0000-4000-8000-000000000001',
      species: facts.species[speciesId]!,
      stage,
      entry: {
        speciesId,
        callName: 'Juniper',
        sex: 'female',
        hatched: '2024-06-01',
        supplierName: 'Invented Breeder, Thistle Lane',
        originCountry: 'United Kingdom',
        acquiredOn: addDays(today, -200),
        bred: 'bred',
      },
      events,
      massG,
      totalLengthCm: totalLengthM * 100,
      movedOn: addDays(today, -200),
      fitness: 'fit',
    },
    proof: null,
    state: 'open',
    ended: null,
    overrides: [],
    shopValues: [],
    vetName: '',
    facts,
    care,
    ...change,
  };
}
