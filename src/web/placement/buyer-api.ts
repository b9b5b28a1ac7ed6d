// The HTTP doors onto what is kept of a buyer.
import { ask } from '../animal/animal-api.ts';

export type BuyerPart =
  | 'enquiry'
  | 'plans'
  | 'proofs'
  | 'placements'
  | 'events'
  | 'calls'
  | 'handReadings'
  | 'readingFiles'
  | 'liveSources'
  | 'keeperLinks';

export interface BuyerData {
  readonly ownWords: readonly {
    readonly part: BuyerPart;
    readonly at: string;
    readonly way: string;
    readonly text: string;
  }[];
}

export interface DueErasures {
  readonly keptDays: { readonly value: number };
  readonly due: readonly { readonly id: string; readonly label: string; readonly updatedAt: string }[];
}

const of = (placementId: string): string => `/api/placements/${encodeURIComponent(placementId)}/buyer`;

export const readBuyer = (placementId: string) => ask<BuyerData>(of(placementId));
export const eraseBuyer = (placementId: string, reason: string) =>
  ask<unknown>(`${of(placementId)}/erasure`, 'POST', { reason });
export const readDue = () => ask<DueErasures>('/api/privacy/due');
export const eraseDue = (ids: readonly string[]) =>
  ask<{ readonly erased: number }>('/api/privacy/due/erasure', 'POST', { ids });
