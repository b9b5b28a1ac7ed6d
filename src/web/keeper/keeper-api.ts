// The two doors behind a keeper's link.
import type { HandPlace } from '../../proving/hand-readings.ts';
import { ask } from '../animal/animal-api.ts';

export interface KeeperPageData {
  readonly state: 'not-yet' | 'proven';
  readonly home: Readonly<Record<string, unknown>>;
  readonly readings: readonly {
    readonly at: string;
    readonly valuesC: Readonly<Partial<Record<HandPlace, number>>>;
    /** Absent in pages kept on the phone before it was told. */
    readonly aside?: boolean;
  }[];
  readonly expiresAt: string;
}

export interface SentReading {
  readonly at: string;
  readonly valuesC: Readonly<Partial<Record<HandPlace, number>>>;
  readonly clientKey: string;
}

export const openPage = (secret: string) => ask<KeeperPageData>(`/api/keeper/${encodeURIComponent(secret)}`);
export const send = (secret: string, readings: readonly SentReading[]) =>
  ask<{ readonly written: number }>(`/api/keeper/${encodeURIComponent(secret)}/readings`, 'POST', { readings });
