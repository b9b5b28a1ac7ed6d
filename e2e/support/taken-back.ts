// One thing is done on its sheet, the page is loaded again, its way back is pressed; then the program says that what stood
// before stands again.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

export interface Deed {
  /** Address of the sheet, and of the sheet of the way back where that is another one. */
  readonly at: string;
  readonly backAt?: string;
  /** What stands, as the program's own doors tell it. */
  readonly stands: () => Promise<unknown>;
  readonly act: (page: Page) => Promise<void>;
  readonly back: (page: Page) => Promise<void>;
}

export async function takenBack(page: Page, { at, backAt = at, stands, act, back }: Deed): Promise<void> {
  await page.goto(at);
  const before = await stands();
  await act(page);
  await expect.poll(stands, { message: 'it was done' }).not.toEqual(before);
  if (backAt === at) await page.reload();
  else await page.goto(backAt);
  await back(page);
  await expect.poll(stands, { message: 'it was taken back' }).toEqual(before);
}

/** Asks a door of the program as its owner. */
export async function told<T>(address: string): Promise<T> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return (await answer.json()) as T;
}

/** Writes through a door as its owner. */
export async function sent(address: string, body: object): Promise<Record<string, unknown>> {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(address, { method: 'POST', headers, body: JSON.stringify(body) });
  const json = (await answer.json()) as Record<string, unknown>;
  if (!answer.ok) throw new Error(`${address}: ${JSON.stringify(json)}`);
  return json;
}

export const daysAgo = (days: number): string => new Date(Date.now() - days * 86_400_000).toISOString().slice(0, 10);
