// Fetches the pack of a placement as a file that the browser can open.
import type { Asked } from '../animal/animal-api.ts';
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
