// The owner of a program under test: made by the code in its terminal, as a person does it, or told by the demonstration.
// From then on this process asks the program as a browser of the owner would: fetch carries the cookie unless it says
// { credentials: 'omit' }, and every new browser context has it until it clears its cookies.
import type { BrowserContext } from 'playwright-core';

export const ownerPassword = 'seven lamps over water';

export interface Owner {
  readonly name: string;
  readonly password: string;
  /** "name=value", as a browser sends it. */
  readonly cookie: string;
}

const owners = new Map<string, Owner>();
const bare = globalThis.fetch;

globalThis.fetch = async (input, init) => {
  const url = String(input instanceof Request ? input.url : input);
  const owner = [...owners].find(([program]) => url.startsWith(`${program}/`))?.[1];
  if (owner === undefined || init?.credentials === 'omit') return await bare(input, init);
  const headers = new Headers(init?.headers);
  if (!headers.has('cookie')) headers.set('cookie', owner.cookie);
  return await bare(input, { ...init, headers });
};

/** @param output  all that the program has written to its terminal */
export async function signInOwner(url: string, output: string): Promise<Owner> {
  const code = /Set-up code: (\S+)/.exec(output)?.[1];
  const told = /^ {2}(.+) \(owner\): (\S+)$/m.exec(output);
  const name = code === undefined ? (told?.[1] ?? '') : 'Test Owner';
  const password = code === undefined ? (told?.[2] ?? '') : ownerPassword;
  const shop = { shopName: 'Test shop', branchName: 'Counter', place: 'england' };
  const cookie =
    code === undefined
      ? await cookieFrom(`${url}/api/session`, { name, password })
      : await cookieFrom(`${url}/api/set-up`, { code, name, password, ...shop });
  const owner = { name, password, cookie };
  owners.set(url, owner);
  return owner;
}

export async function cookieFrom(url: string, body: object): Promise<string> {
  const headers = { 'content-type': 'application/json' };
  const answer = await bare(url, { method: 'POST', headers, body: JSON.stringify(body) });
  const cookie = answer.headers.getSetCookie()[0]?.split(';')[0];
  if (!answer.ok || cookie === undefined) throw new Error(`nobody got in: ${answer.status} ${await answer.text()}`);
  return cookie;
}

/** A program of the same records as another one knows the same sessions. */
export function sameOwner(url: string, owner: Owner): void {
  owners.set(url, owner);
}

export function forgetOwner(url: string): void {
  owners.delete(url);
}

/** Signs a browser in as the owner of every program that runs now. */
export async function signedIn(context: BrowserContext): Promise<void> {
  for (const [url, { cookie }] of owners) {
    const [name = '', value = ''] = cookie.split('=');
    await context.addCookies([{ url, name, value, httpOnly: true, sameSite: 'Strict' }]);
  }
}
