// Fetches the pack of a placement as a file that the browser can open.
import { type Asked, ask } from '../animal/animal-api.ts';
import { type PaperChoice, paperQuery } from '../settings/paper-query.ts';

/** @returns the address of the file inside this page; whoever asked lets it go again */
export async function fetchPack(placementId: string, choice: PaperChoice, signal: AbortSignal): Promise<Asked<string>> {
  try {
    const response = await fetch(`/api/placements/${encodeURIComponent(placementId)}/pack.pdf?${paperQuery(choice)}`, {
      signal,
    });
    if (response.ok) return { ok: true, value: URL.createObjectURL(await response.blob()) };
    const body = (await response.json().catch(() => null)) as { faults?: [] } | null;
    return { ok: false, status: response.status, faults: body?.faults ?? [] };
  } catch {
    return { ok: false, status: 0, faults: [] };
  }
}

export interface PackGiven extends PaperChoice {
  readonly id: string;
  /** State of the placement when it was made; "open" makes it a draft. */
  readonly state: string;
  readonly sha256: string;
  /** Nothing is left of one whose buyer was erased. */
  readonly sizeBytes: number;
  readonly at: string;
  readonly by: string;
}

export interface PartDifference {
  readonly title: string;
  readonly was: readonly string[];
  readonly now: readonly string[];
}

const packsAt = (placementId: string): string => `/api/placements/${encodeURIComponent(placementId)}/packs`;

/** Newest first. */
export const readPacks = (placementId: string) => ask<{ readonly packs: readonly PackGiven[] }>(packsAt(placementId));
export const packAddress = (placementId: string, packId: string): string =>
  `${packsAt(placementId)}/${packId}/pack.pdf`;
export const readDifferences = (placementId: string, packId: string) =>
  ask<{ readonly differences: readonly PartDifference[] }>(`${packsAt(placementId)}/${packId}/differences`);
