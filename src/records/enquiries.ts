// The rows of enquiries: read, put down, change. Every version that ever stood is kept (enquiry_version).
// Leaves out who may do it and what a document must look like (desk/).
import { sql } from 'kysely';
import type { Db } from './schema.ts';

export type EnquiryDocument = Record<string, unknown>;

export interface EnquiryRow {
  readonly id: string;
  readonly version: number;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly createdBy: string;
  readonly document: EnquiryDocument;
}

export interface NewEnquiry {
  readonly id: string;
  readonly branchId: string;
  readonly document: EnquiryDocument;
  readonly at: Date;
  readonly by: string;
}

export async function insertEnquiry(db: Db, enquiry: NewEnquiry): Promise<EnquiryRow> {
  const document = JSON.stringify(enquiry.document);
  return await db.transaction().execute(async (tx) => {
    const row = await tx
      .insertInto('enquiry')
      .values({
        id: enquiry.id,
        branch_id: enquiry.branchId,
        document,
        version: 1,
        created_at: enquiry.at,
        updated_at: enquiry.at,
        created_by: enquiry.by,
      })
      .returning(columns)
      .executeTakeFirstOrThrow();
    await tx
      .insertInto('enquiry_version')
      .values({ enquiry_id: enquiry.id, version: 1, document, at: enquiry.at, by: enquiry.by })
      .execute();
    return row;
  });
}

export async function enquiryById(db: Db, branchId: string, id: string): Promise<EnquiryRow | undefined> {
  return await db
    .selectFrom('enquiry')
    .select(columns)
    .where('branch_id', '=', branchId)
    .where('id', '=', id)
    .executeTakeFirst();
}

/** For a keeper's link, which opens one enquiry of whichever branch gave it out. */
export async function enquiryBehindLink(db: Db, id: string): Promise<EnquiryRow | undefined> {
  return await db.selectFrom('enquiry').select(columns).where('id', '=', id).executeTakeFirst();
}

/** Newest first. */
export async function enquiriesOf(db: Db, branchId: string, limit: number): Promise<EnquiryRow[]> {
  return await db
    .selectFrom('enquiry')
    .select(columns)
    .where('branch_id', '=', branchId)
    .orderBy('updated_at', 'desc')
    .orderBy('id')
    .limit(limit)
    .execute();
}

export interface ChangedEnquiry {
  readonly id: string;
  readonly branchId: string;
  /** The version that the change was made from. */
  readonly fromVersion: number;
  readonly document: EnquiryDocument;
  readonly at: Date;
  readonly by: string;
}

/** The new row, or undefined when it does not exist or has another version by now. */
export async function updateEnquiry(db: Db, change: ChangedEnquiry): Promise<EnquiryRow | undefined> {
  const document = JSON.stringify(change.document);
  return await db.transaction().execute(async (tx) => {
    const row = await tx
      .updateTable('enquiry')
      .set({ document, version: sql`version + 1`, updated_at: change.at })
      .where('branch_id', '=', change.branchId)
      .where('id', '=', change.id)
      .where('version', '=', change.fromVersion)
      .returning(columns)
      .executeTakeFirst();
    if (row === undefined) return undefined;
    await tx
      .insertInto('enquiry_version')
      .values({ enquiry_id: change.id, version: row.version, document, at: change.at, by: change.by })
      .execute();
    return row;
  });
}

export interface EnquiryVersionRow {
  readonly version: number;
  readonly at: Date;
  readonly by: string;
  readonly document: EnquiryDocument;
}

/** Oldest first. */
export async function enquiryVersions(db: Db, id: string): Promise<EnquiryVersionRow[]> {
  return await db
    .selectFrom('enquiry_version')
    .select(['version', 'at', 'by', 'document'])
    .where('enquiry_id', '=', id)
    .orderBy('version')
    .execute();
}

const columns = [
  'id',
  'version',
  'created_at as createdAt',
  'updated_at as updatedAt',
  'created_by as createdBy',
  'document',
] as const;
