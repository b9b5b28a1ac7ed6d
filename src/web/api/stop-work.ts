// Stops work at the shop computer and hears whether its outcome was kept before the stop came.
import { send } from './send.ts';

/** @returns null when no answer came */
export async function stopOnServer(workId: string): Promise<'kept' | 'stopped' | null> {
  try {
    const response = await send(`/api/work/${workId}/stop`, { method: 'POST' });
    if (!response.ok) return null;
    return ((await response.json()) as { readonly ended: 'kept' | 'stopped' }).ended;
  } catch {
    return null;
  }
}
