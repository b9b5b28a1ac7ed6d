// The HTTP doors this page uses: enquiries kept by the shop's own server.
// Leaves out the simulation: that runs in the page's workers.

import type { NeedVerdict } from '../../husbandry/need.ts';
import type { Enclosure } from '../../physics/enclosure.ts';
import type { Fault } from '../../shared/fault.ts';
import type { Verdict } from '../../shared/verdict.ts';
import type { Part } from '../controls/long-work.tsx';
import type { PlanDocument } from '../state/document.ts';
import { send } from './send.ts';

export interface EnquiryStamp {
  readonly id: string;
  readonly version: number;
  readonly updatedAt: string;
  readonly title: string;
}
export type StoredEnquiry = EnquiryStamp & { readonly document: unknown };

/** status 0: no answer came at all. */
export type Answered<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: number; readonly faults: readonly Fault[] };

async function call<T>(path: string, init?: RequestInit): Promise<Answered<T>> {
  try {
    const response = await send(path, init);
    const body: unknown = await response.json().catch(() => null);
    if (response.ok) return { ok: true, value: body as T };
    const faults = (body as { faults?: readonly Fault[] } | null)?.faults ?? [];
    return { ok: false, status: response.status, faults };
  } catch {
    return { ok: false, status: 0, faults: [] };
  }
}

const json = (method: 'POST' | 'PUT', document: PlanDocument, headers: Record<string, string> = {}): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json', ...headers },
  body: JSON.stringify({ document }),
});

export const createEnquiry = (document: PlanDocument) => call<StoredEnquiry>('/api/enquiries', json('POST', document));

export const updateEnquiry = (id: string, version: number, document: PlanDocument) =>
  call<StoredEnquiry>(
    `/api/enquiries/${encodeURIComponent(id)}`,
    json('PUT', document, { 'if-match': `"${version}"` }),
  );

export const readEnquiry = (id: string) => call<StoredEnquiry>(`/api/enquiries/${encodeURIComponent(id)}`);

export const listEnquiries = () => call<{ readonly enquiries: readonly EnquiryStamp[] }>('/api/enquiries');

/** A plan that is kept with an enquiry. */
export interface KeptPlan {
  readonly id: string;
  readonly enquiryVersion: number;
  readonly modelVersion: string;
  readonly at: string;
  readonly by: string;
  readonly answer: { readonly verdict: Verdict; readonly needs: readonly NeedVerdict[] };
  /** Who set it aside, so that it does not count. */
  readonly aside: { readonly at: string; readonly by: string } | null;
}

/** The newest of them, or none. */
export const readKeptPlan = (enquiryId: string) =>
  call<{ readonly results: readonly KeptPlan[] }>(`/api/enquiries/${encodeURIComponent(enquiryId)}/plans?most=1`);

export const letPlanCount = (enquiryId: string, planId: string, way: 'aside' | 'back') =>
  call<{ readonly id: string }>(`/api/enquiries/${encodeURIComponent(enquiryId)}/plans/${planId}/${way}`, {
    method: 'POST',
  });

/** What the server keeps of a verdict: its own answer, and which model and facts gave it. */
export interface KeptVerdict {
  readonly answer: { readonly verdict: Verdict };
  readonly modelVersion: string;
  readonly dataVersion: string;
}

/** Has the server work the plan out itself and keep the answer with the enquiry. */
export const keepVerdict = (
  enquiryId: string,
  enclosure: Enclosure,
  standardId: string | undefined,
  { signal, workId }: Part,
) =>
  call<KeptVerdict>(`/api/plan?work=${workId}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ enclosure, enquiryId, standardId }),
    signal,
  });
