// The keeper's page: a link the shop gives out, what stands behind it, and the readings that come back through it.
// Whoever holds the link sees the home's drawing and whether it is proven; no names, no animal, nothing else.
import { type HandReading, handPlaces, handReadingFaults } from '../proving/hand-readings.ts';
import { enquiryBehindLink } from '../records/enquiries.ts';
import { everyHandReadingOf, insertHandReading } from '../records/hand-readings.ts';
import {
  insertKeeperLink,
  type KeeperLink,
  keeperLinkBySecret,
  keeperLinksOf,
  withdrawKeeperLink,
} from '../records/keeper-links.ts';
import { newestProof, setAsideSince } from '../records/readings.ts';
import type { Db } from '../records/schema.ts';
import { wallSecondsOf } from '../records/wall-clock.ts';
import type { Fault } from '../shared/fault.ts';
import { bad, good, type Result } from '../shared/result.ts';
import type { Clock, DeskContext } from './desk-context.ts';
import { enquiryFor, homeOf } from './home-of-enquiry.ts';
import { readingFaults } from './reading-faults.ts';
import { newSecret, secretHash } from './secrets.ts';
import { writerOf } from './take-reading-file.ts';

const shortestDays = 1;
/** A year of aftercare and some; our choice. */
const longestDays = 400;

/** Makes a link; its secret is told once. Faults: "ENQUIRY_UNKNOWN", "PROOF_NO_HOME", "KEEPER_LINK_DAYS". */
export async function giveKeeperLink(
  desk: DeskContext,
  enquiryId: string,
  days: number,
): Promise<Result<{ readonly id: string; readonly secret: string; readonly expiresAt: string }>> {
  if (!Number.isInteger(days) || days < shortestDays || days > longestDays) return bad([readingFaults.linkDays(days)]);
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  const home = homeOf(enquiry.value);
  if (!home.ok) return home;
  const secret = newSecret();
  const writer = writerOf(desk);
  const expiresAt = new Date(writer.at.getTime() + days * 86_400_000);
  const id = await insertKeeperLink(desk.db, enquiryId, secretHash(secret), expiresAt, writer);
  return good({ id, secret, expiresAt: expiresAt.toISOString() });
}

/** Faults: "ENQUIRY_UNKNOWN", "KEEPER_LINK". */
export async function takeBackKeeperLink(
  desk: DeskContext,
  enquiryId: string,
  linkId: string,
): Promise<Result<{ readonly id: string }>> {
  const links = await listKeeperLinks(desk, enquiryId);
  if (!links.ok) return links;
  if (!links.value.some((l) => l.id === linkId)) return bad([readingFaults.linkUnknown]);
  await withdrawKeeperLink(desk.db, linkId, writerOf(desk));
  return good({ id: linkId });
}

/** Faults: "ENQUIRY_UNKNOWN". */
export async function listKeeperLinks(desk: DeskContext, enquiryId: string): Promise<Result<KeeperLink[]>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  return enquiry.ok ? good(await keeperLinksOf(desk.db, enquiryId)) : enquiry;
}

export interface KeeperPage {
  readonly state: 'not-yet' | 'proven';
  /** Box, heaters, thermostats and furniture; no name, no animal, no room. */
  readonly home: Readonly<Record<string, unknown>>;
  readonly places: readonly string[];
  /** Days on which morning, afternoon and evening were read, by the readings that came in. The shop's reason for setting one
   *  aside is not told here. */
  readonly readings: readonly {
    readonly at: string;
    readonly valuesC: HandReading['valuesC'];
    readonly aside: boolean;
  }[];
  readonly expiresAt: string;
}

/** What a keeper's link shows. Faults: "KEEPER_LINK". */
export async function openKeeperPage(db: Db, clock: Clock, secret: string): Promise<Result<KeeperPage>> {
  const link = await workingLink(db, clock, secret);
  const enquiry = link && (await enquiryBehindLink(db, link.enquiryId));
  const home = enquiry && homeOf(enquiry);
  if (!link || !enquiry || !home?.ok) return bad([readingFaults.linkUnknown]);
  const proof = await newestProof(db, link.enquiryId);
  const said = proof !== undefined && proof.enquiryVersion === enquiry.version && proof.answer.verdict === 'proven';
  // Readings that come in later do not shake a proof in a keeper's eyes; one that no longer counts does. Proofs kept before
  // the state of their readings was have seen none set aside.
  const seen = String(proof?.inputs.readingsState ?? '0/0/0');
  const proven = said && !(await setAsideSince(db, link.enquiryId, seen));
  const rows = await everyHandReadingOf(db, link.enquiryId);
  return good({
    state: proven ? 'proven' : 'not-yet',
    home: drawnParts(home.value),
    places: handPlaces,
    readings: rows.map((r) => ({
      at: new Date(r.atS * 1000).toISOString().slice(0, 16),
      valuesC: r.valuesC,
      aside: r.aside !== null,
    })),
    expiresAt: link.expiresAt.toISOString(),
  });
}

export interface SentReading {
  /** "2026-11-24T21:05" on the keeper's own clock. */
  readonly at: string;
  readonly valuesC: HandReading['valuesC'];
  /** Chosen by the phone, so that sending twice writes once. */
  readonly clientKey: string;
}

/** Readings from a keeper's phone, typed now or while it had no connection.
 *  Faults: "KEEPER_LINK", "HAND_NONE", "HAND_RANGE", "HAND_TIME". */
export async function sendFromKeeper(
  db: Db,
  clock: Clock,
  secret: string,
  sent: readonly SentReading[],
): Promise<Result<{ readonly written: number }>> {
  const link = await workingLink(db, clock, secret);
  if (link === null) return bad([readingFaults.linkUnknown]);
  return await keepSent(db, clock, { enquiryId: link.enquiryId, linkId: link.id, by: 'keeper' }, sent);
}

/** Readings typed at the desk, on the phone. Faults: "ENQUIRY_UNKNOWN", "HAND_NONE", "HAND_RANGE", "HAND_TIME". */
export async function typeReadings(
  desk: DeskContext,
  enquiryId: string,
  sent: readonly SentReading[],
): Promise<Result<{ readonly written: number }>> {
  const enquiry = await enquiryFor(desk, enquiryId);
  if (!enquiry.ok) return enquiry;
  return await keepSent(desk.db, desk.clock, { enquiryId, linkId: null, by: desk.actor.name }, sent);
}

async function keepSent(
  db: Db,
  clock: Clock,
  from: { readonly enquiryId: string; readonly linkId: string | null; readonly by: string },
  sent: readonly SentReading[],
): Promise<Result<{ readonly written: number }>> {
  const now = clock.now();
  const faults: Fault[] = [];
  const readings = sent.map((s, i) => {
    const atS = wallFromText(s.at);
    // a keeper's zone may differ from the shop's: a day of play
    const usable = atS !== null && atS <= wallSecondsOf(now) + 86_400 && atS >= wallSecondsOf(now) - 60 * 86_400;
    if (!usable) faults.push({ ...readingFaults.readingTime(s.at.slice(0, 30)), field: `readings[${i}].at` });
    const reading: HandReading = { atS: atS ?? 0, valuesC: s.valuesC };
    faults.push(...handReadingFaults(reading).map((f) => ({ ...f, field: `readings[${i}].${f.field}` })));
    return reading;
  });
  if (faults.length > 0) return bad(faults);
  let written = 0;
  for (const [i, reading] of readings.entries()) {
    const row = { ...reading, enquiryId: from.enquiryId, linkId: from.linkId, clientKey: sent[i]!.clientKey };
    if (await insertHandReading(db, row, { at: now, by: from.by })) written++;
  }
  return good({ written });
}

function wallFromText(text: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2})?$/.test(text)) return null;
  const ms = Date.parse(`${text}Z`);
  return Number.isFinite(ms) ? Math.floor(ms / 1000) : null;
}

export async function workingLink(db: Db, clock: Clock, secret: string): Promise<KeeperLink | null> {
  const link = await keeperLinkBySecret(db, secretHash(secret));
  if (link === undefined || link.withdrawnAt !== null || link.expiresAt <= clock.now()) return null;
  return link;
}

/** What a drawing needs, and only that. */
const drawn = [
  'box',
  'heaters',
  'thermostats',
  'day',
  'substrate',
  'hides',
  'bowl',
  'perch',
  'thermometers',
  'coverFrac',
  'misting',
  'lock',
];

const drawnParts = (home: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(drawn.map((key) => [key, home[key] ?? null]));
