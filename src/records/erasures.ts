// The rows of erasures, and the taking out itself: every place where the own words of a buyer can stand, in one
// transaction in which the chain adds a link for each changed row. Leaves out who may and when (desk/privacy/).
import { randomUUID } from 'node:crypto';
import { type RawBuilder, sql } from 'kysely';
import { enquiryWithoutOwnWords, withoutOwnWords } from './own-words.ts';
import type { Db } from './schema.ts';

export interface Erasure {
  readonly id: string;
  readonly enquiryId: string;
  readonly reason: string;
  readonly rowsChanged: Readonly<Record<string, number>>;
  readonly at: Date;
  readonly by: string;
}

export async function erasureOf(db: Db, enquiryId: string): Promise<Erasure | undefined> {
  return await db
    .selectFrom('erasure')
    .select(['id', 'enquiry_id as enquiryId', 'reason', 'rows_changed as rowsChanged', 'at', 'by'])
    .where('enquiry_id', '=', enquiryId)
    .executeTakeFirst();
}

interface JsonPlace {
  readonly table: string;
  readonly column: string;
  readonly key: string;
  readonly where: (enquiryId: string) => RawBuilder<unknown>;
  readonly clean: (document: Readonly<Record<string, unknown>>, note: string) => unknown;
}

const ofEnquiry = (enquiryId: string) => sql`enquiry_id = ${enquiryId}`;

/** Every document in which words of a buyer can stand. */
const jsonPlaces: readonly JsonPlace[] = [
  { table: 'enquiry', column: 'document', key: 'id', where: (id) => sql`id = ${id}`, clean: enquiryWithoutOwnWords },
  { table: 'enquiry_version', column: 'document', key: 'version', where: ofEnquiry, clean: enquiryWithoutOwnWords },
  { table: 'plan_result', column: 'answer', key: 'id', where: ofEnquiry, clean: boxNameOnly },
  { table: 'proof_result', column: 'answer', key: 'id', where: ofEnquiry, clean: boxNameOnly },
  { table: 'proof_result', column: 'inputs', key: 'id', where: ofEnquiry, clean: boxNameOnly },
  {
    table: 'placement_event',
    column: 'body',
    key: 'id',
    where: (id) => sql`placement_id in (select id from placement where enquiry_id = ${id})`,
    clean: withoutOwnWords,
  },
  {
    // What a keeper told when calling about the animal; the entry, its day and its answer stay in the register.
    table: 'animal_event',
    column: 'body',
    key: 'id',
    where: (id) => sql`kind = 'call' and exists (select 1 from placement p where p.enquiry_id = ${id}
      and p.animal_id = animal_event.animal_id and p.at <= animal_event.recorded_at)`,
    clean: withoutOwnWords,
  },
];

/** Answers of the program hold no own words but the name of the box. */
function boxNameOnly(answer: Readonly<Record<string, unknown>>, note: string): unknown {
  const { enclosure } = answer;
  if (typeof enclosure !== 'object' || enclosure === null || !('name' in enclosure)) return answer;
  return { ...answer, enclosure: { ...enclosure, name: note } };
}

const textPlaces = [
  { table: 'reading_file', column: 'name', where: ofEnquiry },
  { table: 'live_source', column: 'label', where: ofEnquiry },
  {
    table: 'reading_file_withdrawal',
    column: 'why',
    where: (id: string) => sql`file_id in (select id from reading_file where enquiry_id = ${id})`,
  },
  {
    table: 'hand_reading_standing',
    column: 'why',
    where: (id: string) => sql`reading_id in (select id from hand_reading where enquiry_id = ${id})`,
  },
] as const;

export interface ErasureWriter {
  readonly branchId: string;
  readonly reason: string;
  /** Stands where words stood. */
  readonly note: string;
  readonly at: Date;
  readonly by: string;
}

/** Inside the caller's transaction. @returns what was done */
export async function eraseOwnWords(tx: Db, enquiryId: string, writer: ErasureWriter): Promise<Erasure> {
  const { branchId, reason, note, at, by } = writer;
  await sql`select set_config('warmstead.erased_by', ${`${by}, ${at.toISOString()}: ${reason}`}, true)`.execute(tx);
  const changed: Record<string, number> = {};
  for (const place of jsonPlaces) await cleanJson(tx, place, enquiryId, note, changed);
  for (const { table, column, where } of textPlaces) {
    const done = await sql`update ${sql.table(table)} set ${sql.ref(column)} = ${note}
      where ${where(enquiryId)} and ${sql.ref(column)} not in ('', ${note})`.execute(tx);
    changed[table] = (changed[table] ?? 0) + Number(done.numAffectedRows ?? 0);
  }
  const papers = await sql`update pack_given set bytes = '', said = '[]', sha256 = encode(sha256(''), 'hex')
    where placement_id in (select id from placement where enquiry_id = ${enquiryId}) and bytes <> ''`.execute(tx);
  changed.pack_given = Number(papers.numAffectedRows ?? 0);
  // The chain writes its links while the name of who erased still stands.
  await sql`set constraints all immediate`.execute(tx);
  await sql`set constraints all deferred`.execute(tx);
  await sql`select set_config('warmstead.erased_by', '', true)`.execute(tx);
  await closeDoors(tx, enquiryId, { at, by });
  const id = randomUUID();
  await tx
    .insertInto('erasure')
    .values({ id, branch_id: branchId, enquiry_id: enquiryId, reason, rows_changed: JSON.stringify(changed), at, by })
    .execute();
  return { id, enquiryId, reason, rowsChanged: changed, at, by };
}

async function cleanJson(tx: Db, place: JsonPlace, enquiryId: string, note: string, changed: Record<string, number>) {
  const { table, column, key, where, clean } = place;
  const found = await sql<{ key: string; document: Record<string, unknown> | null }>`
    select ${sql.ref(key)}::text as key, ${sql.ref(column)} as document from ${sql.table(table)}
    where ${where(enquiryId)}`.execute(tx);
  for (const row of found.rows) {
    if (row.document === null) continue;
    const without = JSON.stringify(clean(row.document, note));
    const done = await sql`update ${sql.table(table)} set ${sql.ref(column)} = ${without}::jsonb
      where ${where(enquiryId)} and ${sql.ref(key)}::text = ${row.key}
        and ${sql.ref(column)} is distinct from ${without}::jsonb`.execute(tx);
    changed[table] = (changed[table] ?? 0) + Number(done.numAffectedRows ?? 0);
  }
}

/** Links and calendars that this buyer was given open nothing any more; what is due is worked out anew. */
async function closeDoors(tx: Db, enquiryId: string, { at, by }: { readonly at: Date; readonly by: string }) {
  await sql`insert into keeper_link_withdrawal (link_id, at, by)
    select id, ${at}, ${by} from keeper_link where enquiry_id = ${enquiryId} on conflict do nothing`.execute(tx);
  await sql`insert into calendar_feed_withdrawal (feed_id, at, by)
    select f.id, ${at}, ${by} from calendar_feed f join placement p on p.id = f.placement_id
    where p.enquiry_id = ${enquiryId} on conflict do nothing`.execute(tx);
  await sql`insert into aftercare_stale
    select a.placement_id from aftercare_placement a join placement p on p.id = a.placement_id
    where p.enquiry_id = ${enquiryId} order by 1 on conflict do nothing`.execute(tx);
}

export interface DueErasure {
  readonly id: string;
  readonly label: string;
  readonly updatedAt: Date;
}

/** Enquiries that no animal was ever meant for and nobody has touched since a moment, longest first. */
export async function unplacedSince(db: Db, branchId: string, before: Date, most: number): Promise<DueErasure[]> {
  const found = await sql<DueErasure>`
    select e.id, coalesce(e.document #>> '{answers,label}', '') as label, e.updated_at as "updatedAt" from enquiry e
    where e.branch_id = ${branchId} and e.updated_at < ${before}
      and not exists (select 1 from placement p where p.enquiry_id = e.id)
      and not exists (select 1 from erasure x where x.enquiry_id = e.id)
    order by e.updated_at, e.id limit ${most}`.execute(db);
  return found.rows;
}

/** Every row that belongs to a buyer, as it stands, for the buyer to have. */
export async function rowsOfBuyer(db: Db, enquiryId: string): Promise<Readonly<Record<string, readonly object[]>>> {
  const rows = async (query: RawBuilder<object>): Promise<readonly object[]> => (await query.execute(db)).rows;
  const ofPlacements = sql`placement_id in (select id from placement where enquiry_id = ${enquiryId})`;
  const id = enquiryId;
  return {
    enquiry: await rows(
      sql`select version, at, document from enquiry_version where enquiry_id = ${id} order by version`,
    ),
    plans: await rows(sql`select at, answer from plan_result where enquiry_id = ${id} order by seq`),
    proofs: await rows(sql`select at, answer from proof_result where enquiry_id = ${id} order by seq`),
    placements: await rows(sql`select id, animal_id, at from placement where enquiry_id = ${id} order by at`),
    events: await rows(sql`select at, kind, body from placement_event where ${ofPlacements} order by seq`),
    calls: await rows(sql`select v.happened_on::text as on, v.body from animal_event v where v.kind = 'call' and exists
      (select 1 from placement p where p.enquiry_id = ${id} and p.animal_id = v.animal_id and p.at <= v.recorded_at)
      order by v.seq`),
    handReadings: await rows(sql`select at, wall_s, values_c from hand_reading where enquiry_id = ${id} order by at`),
    handReadingsSetAside: await rows(sql`select s.at, h.wall_s, s.counts, s.why from hand_reading_standing s
      join hand_reading h on h.id = s.reading_id where h.enquiry_id = ${id} order by s.seq`),
    readingFiles: await rows(
      sql`select at, name, sha256, encode(bytes, 'base64') as bytes_base64
        from reading_file where enquiry_id = ${id} order by seq`,
    ),
    liveSources: await rows(
      sql`select at, label, place, quantity from live_source where enquiry_id = ${id} order by at`,
    ),
    packs: await rows(sql`select at, language, sha256, encode(bytes, 'base64') as bytes_base64
      from pack_given where ${ofPlacements} order by seq`),
    keeperLinks: await rows(sql`select at, expires_at from keeper_link where enquiry_id = ${id} order by at`),
  };
}
