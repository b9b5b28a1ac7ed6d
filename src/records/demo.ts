// What a demonstration shop begins with: a handful of enquiries of our own invention, made from the ready
// enclosures, one of them only half answered and one in a room that is too cold. No person is real.
import { randomUUID } from 'node:crypto';
import type { Transaction } from 'kysely';
import type { Enclosure } from '../physics/enclosure.ts';
import { dataFolder } from './data-files.ts';
import { fillDemoAnimals } from './demo-animals.ts';
import type { EnquiryDocument } from './enquiries.ts';
import type { Tables } from './schema.ts';

export const demoShop = { shopName: 'Thistle Yard (demonstration shop)', branchName: 'Counter' } as const;

interface DemoEnquiry {
  readonly label: string;
  /** Name of a file of data/examples. */
  readonly example: string;
  /** Coldest winter night of the room where it differs from the example's [°C]. */
  readonly winterLowC?: number;
  /** Hottest summer day of the room where it differs from the example's [°C]. */
  readonly halfAnswered?: true;
  /** Days before today that it was opened. */
  readonly daysAgo: number;
}

const demoEnquiries: readonly DemoEnquiry[] = [
  { label: 'Corn snake, flat above the bakery', example: 'wood-1200', daysAgo: 6 },
  { label: 'Royal python, upstairs study', example: 'pvc-1200', daysAgo: 4 },
  { label: 'Hatchling kingsnake, first snake of the house', example: 'tub-mat-600', daysAgo: 3 },
  { label: 'Hognose, unheated garden room', example: 'glass-mesh-900', winterLowC: 6, daysAgo: 2 },
  { label: 'Boa from the rehoming desk', example: 'large-wood-1800', halfAnswered: true, daysAgo: 1 },
];

/** Puts the demonstration down in the transaction that makes the shop. */
export async function fillDemo(tx: Transaction<Tables>, branchId: string, now: Date): Promise<void> {
  const examples = dataFolder('examples');
  for (const demo of demoEnquiries) {
    const enclosure = examples[demo.example];
    if (enclosure === undefined) throw new Error(`the demonstration names an unknown enclosure ${demo.example}`);
    const dayMs = 86_400_000;
    const at = new Date(now.getTime() - demo.daysAgo * dayMs);
    const id = randomUUID();
    const document = JSON.stringify(demoDocument(demo, enclosure as unknown as Enclosure));
    const by = 'demonstration';
    await tx
      .insertInto('enquiry')
      .values({ id, branch_id: branchId, document, version: 1, created_at: at, updated_at: at, created_by: by })
      .execute();
    await tx.insertInto('enquiry_version').values({ enquiry_id: id, version: 1, document, at, by }).execute();
  }
  await fillDemoAnimals(tx, branchId, now);
}

/** The same shape that the enquiry screen writes. */
export function demoDocument(demo: DemoEnquiry, enclosure: Enclosure): EnquiryDocument {
  const { animal, room } = enclosure;
  const open = demo.halfAnswered === true;
  const answers = {
    label: demo.label,
    speciesId: animal?.speciesId ?? null,
    stage: animal?.stage ?? null,
    totalLengthM: animal?.totalLengthM ?? null,
    massG: animal?.massG ?? null,
    winterLowC: open ? null : (demo.winterLowC ?? room.winter.lowC),
    winterHighC: open ? null : room.winter.highC,
    summerLowC: open ? null : room.summer.lowC,
    summerHighC: open ? null : room.summer.highC,
    rhPct: open ? null : room.winter.rhPct,
    summerRhPct: open ? null : room.summer.rhPct,
    rhMeasured: !open,
    sun: open ? null : room.summer.sunPeakWPerM2 > 0 ? 'some' : 'none',
    startFrom: demo.example,
    cautionsExplained: !open,
  };
  return { format: 'warmstead-enquiry', version: 1, answers, enclosure };
}
