// The HTTP doors onto readings, proofs, instruments and links, and the shapes that come back.

import type { UsedShopValues } from '../../husbandry/used-shop-values.ts';
import type { LogFinding, LogHints, LogQuestion, RejectedRow, UnderstoodLog } from '../../proving/files/understood.ts';
import type { HandPlace } from '../../proving/hand-readings.ts';
import type { Instrument, Trust } from '../../proving/instrument.ts';
import type { CheckStep } from '../../proving/instrument-check.ts';
import type { Channel, LogPlace, Quantity } from '../../proving/reading-log.ts';
import type { ProofAnswer } from '../../proving/verdict/proof-answer.ts';
import type { ProofRule, RuleSetting } from '../../proving/verdict/rule.ts';
import { type Asked, ask } from '../animal/animal-api.ts';
import { send } from '../api/send.ts';
import type { Part } from '../controls/long-work.tsx';

export interface ShownFile {
  readonly id: string;
  readonly name: string;
  readonly hints: LogHints;
  readonly understood: {
    readonly delimiter: string;
    readonly decimal: string;
    readonly dateOrder: UnderstoodLog['dateOrder'];
    readonly clock: Pick<UnderstoodLog['clock'], 'say' | 'told'>;
    readonly rowsInFile: number;
    readonly rowsRead: number;
    readonly rejectedByReason: Readonly<Partial<Record<RejectedRow['reason'], number>>>;
    readonly intervalS: number;
    readonly fromS: number;
    readonly toS: number;
    readonly channels: readonly (Omit<Channel, 'values'> & { readonly readings: number })[];
    readonly findings: readonly LogFinding[];
    readonly questions: readonly LogQuestion[];
  };
}

export interface Curves {
  readonly kind: 'logger' | 'hand';
  readonly fromS: number;
  readonly toS: number;
  readonly curves: readonly {
    readonly id: string;
    readonly label: string;
    readonly place: LogPlace | null;
    readonly quantity: Quantity;
    readonly points: readonly (readonly [number, number | null])[];
  }[];
}

export interface ShownProof {
  readonly proof: {
    readonly answer: ProofAnswer;
    readonly inputs: Partial<UsedShopValues>;
    readonly at: string;
    readonly by: string;
  } | null;
  readonly current: boolean;
  readonly branchRule: { readonly rule: ProofRule; readonly settings: readonly RuleSetting[] };
}

export interface ShownInstruments {
  readonly instruments: readonly (Instrument & { readonly temp: Trust; readonly humidity: Trust })[];
  readonly steps: { readonly ice: readonly CheckStep[]; readonly salt: readonly CheckStep[] };
}

export interface LiveState {
  readonly id: string;
  readonly label: string;
  readonly place: LogPlace;
  readonly quantity: Quantity;
  readonly value: number | null;
  readonly state: 'fresh' | 'stale' | 'never';
  readonly lastAt: string | null;
}

export interface TypedReading {
  readonly id: string;
  /** Seconds since 1970 on the home's own clock. */
  readonly atS: number;
  readonly valuesC: Readonly<Partial<Record<HandPlace, number>>>;
  readonly by: string;
  readonly fromKeeper: boolean;
  readonly aside: { readonly why: string; readonly by: string; readonly at: string } | null;
}

export interface KeeperLink {
  readonly id: string;
  readonly expiresAt: string;
  readonly withdrawnAt: string | null;
}

const at = (id: string, rest: string): string => `/api/enquiries/${id}/${rest}`;

/** Files that count, and the names of those set aside. */
export interface ShownFiles {
  readonly files: readonly ShownFile[];
  readonly aside: readonly { readonly id: string; readonly name: string }[];
}

export const readFiles = (id: string) => ask<ShownFiles>(at(id, 'reading-files'));
export const readCurves = (id: string) => ask<Curves>(at(id, 'readings'));
export const readProof = (id: string) => ask<ShownProof>(at(id, 'proof'));
export const readLive = (id: string) => ask<{ readonly sources: readonly LiveState[] }>(at(id, 'live'));
export const readLinks = (id: string) => ask<{ readonly links: readonly KeeperLink[] }>(at(id, 'keeper-links'));
export const readInstruments = () => ask<ShownInstruments>('/api/instruments');

export const judge = (id: string, enclosure: object | null, { signal, workId }: Part) =>
  ask<{ readonly answer: ProofAnswer }>(
    at(id, `proof?work=${workId}`),
    'POST',
    enclosure === null ? {} : { enclosure },
    signal,
  );
export const answerFile = (id: string, fileId: string, hints: LogHints) =>
  ask<ShownFile>(at(id, `reading-files/${fileId}/answers`), 'PUT', hints);
export const setFileAside = (id: string, fileId: string, why: string) =>
  ask<object>(at(id, `reading-files/${fileId}/aside`), 'POST', { why });
export const takeFileBack = (id: string, fileId: string) => ask<object>(at(id, `reading-files/${fileId}/back`), 'POST');
export const typeReading = (id: string, reading: object) =>
  ask<object>(at(id, 'hand-readings'), 'POST', { readings: [reading] });
export const readTyped = (id: string) => ask<{ readonly readings: readonly TypedReading[] }>(at(id, 'hand-readings'));
export const setReadingAside = (id: string, readingId: string, why: string) =>
  ask<object>(at(id, `hand-readings/${readingId}/aside`), 'POST', { why });
export const takeReadingBack = (id: string, readingId: string) =>
  ask<object>(at(id, `hand-readings/${readingId}/back`), 'POST');
export const giveLink = (id: string, days: number) =>
  ask<{ readonly id: string; readonly secret: string; readonly expiresAt: string }>(at(id, 'keeper-links'), 'POST', {
    days,
  });
export const takeBackLink = (id: string, linkId: string) =>
  ask<object>(at(id, `keeper-links/${linkId}/withdraw`), 'POST');
export const addSource = (id: string, source: object) =>
  ask<{ readonly id: string; readonly secret: string }>(at(id, 'live-sources'), 'POST', source);
export const addInstrument = (name: string) => ask<object>('/api/instruments', 'POST', { name });
export const checkInstrument = (id: string, check: object) =>
  ask<object>(`/api/instruments/${id}/checks`, 'POST', check);

/** The file goes as it is; the server reads it as a stream. */
export async function sendFile(id: string, file: File, { signal, workId }: Part): Promise<Asked<ShownFile>> {
  try {
    const query = new URLSearchParams({ name: file.name.slice(0, 200), work: workId });
    const response = await send(`${at(id, 'reading-files')}?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
      signal,
    });
    const body = await response.json().catch(() => null);
    return response.ok
      ? { ok: true, value: body as ShownFile }
      : { ok: false, status: response.status, faults: body?.faults ?? [] };
  } catch {
    return { ok: false, status: 0, faults: [] };
  }
}
