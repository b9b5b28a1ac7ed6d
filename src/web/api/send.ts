// Sends a request to the shop computer. When nobody is signed in any more, or a password is asked for once more, the
// person is asked over the sheet, and the same request goes out again: what was typed is never lost.
import { type Asking, askAtTheDoor } from '../account/here.ts';

const askingFor: Readonly<Record<string, Asking>> = {
  ACCOUNT_NEEDED: 'session',
  ACCOUNT_LOCKED: 'session',
  ACCOUNT_PROVE: 'proof',
};

/** Throws as fetch does when no answer came at all. */
export async function send(path: string, init?: RequestInit): Promise<Response> {
  const response = await fetch(path, init);
  if (response.status !== 401 && response.status !== 403) return response;
  const body = (await response
    .clone()
    .json()
    .catch(() => null)) as { faults?: readonly { code: string }[] } | null;
  const asking = askingFor[body?.faults?.[0]?.code ?? ''];
  // Only the same person's words go out under that person's name.
  if (asking === undefined || !(await askAtTheDoor(asking))) return response;
  return await send(path, init);
}
