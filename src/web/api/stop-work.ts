// Stops work at the shop computer and hears whether its outcome was kept before the stop came.
import { send } from './send.ts';

export interface Ended {
  readonly ended: 'kept' | 'stopped';
  /** Id of what was kept. */
  readonly keptId: string | null;
}

/** @returns null when no answer came */
export async function stopOnServer(workId: string): Promise<Ended | null> {
  try {
    const response = await send(`/api/work/${workId}/stop`, { method: 'POST' });
    if (!response.ok) return null;
    return (await response.json()) as Ended;
  } catch {
    return null;
  }
}
