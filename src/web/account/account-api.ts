// The HTTP doors of coming and going, of one's own account and of the people who work here.
import type { Place } from '../../husbandry/law-rule.ts';
import type { Fault } from '../../shared/fault.ts';
import { type Asked, ask } from '../animal/animal-api.ts';
import type { PersonRole } from './here.ts';

export interface OwnAccount {
  readonly sessions: readonly {
    readonly id: string;
    readonly device: 'phone' | 'tablet' | 'computer' | 'program';
    readonly how: 'password' | 'passkey' | 'pin';
    readonly seenAt: string;
    readonly locked: boolean;
    readonly here: boolean;
  }[];
  readonly passkeys: readonly { readonly id: string; readonly name: string; readonly at: string }[];
  readonly branches: readonly Branch[];
}

export interface Branch {
  readonly id: string;
  readonly name: string;
}

export interface Standing {
  readonly role: PersonRole;
  readonly branchId: string | null;
  readonly disabled: boolean;
}

export interface PersonLine extends Standing {
  readonly id: string;
  readonly name: string;
  readonly hasPassword: boolean;
  readonly hasPin: boolean;
  readonly mayChange: boolean;
}

export interface People {
  readonly people: readonly PersonLine[];
  readonly changes: readonly {
    readonly id: string;
    readonly personId: string;
    readonly kind: string;
    readonly was: Partial<Standing>;
    readonly now: Partial<Standing>;
    readonly at: string;
    readonly by: string;
  }[];
  readonly branches: readonly Branch[];
  readonly places: readonly Place[];
}

/** Doors where a wrong secret is answered, not asked for again: they do not wait for anybody to sign in. */
async function knock<T>(path: string, body: object): Promise<Asked<T>> {
  try {
    const headers = { 'content-type': 'application/json' };
    const response = await fetch(path, { method: 'POST', headers, body: JSON.stringify(body) });
    const json = (await response.json().catch(() => null)) as (T & { faults?: readonly Fault[] }) | null;
    if (response.ok) return { ok: true, value: json as T };
    return { ok: false, status: response.status, faults: json?.faults ?? [] };
  } catch {
    return { ok: false, status: 0, faults: [] };
  }
}

export const setUp = (body: object) => knock('/api/set-up', body);
export const signIn = (name: string, password: string) => knock('/api/session', { name, password });
export const choosePassword = (code: string, password: string) => knock('/api/session/code', { code, password });
export const switchTo = (personId: string, pin: string) => knock('/api/session/switch', { personId, pin });
export const proveAgain = (password: string) => knock('/api/session/prove', { password });
export const passkeyQuestion = () => knock<{ id: string; options: object }>('/api/session/passkey-question', {});
export const answerByPasskey = (id: string, response: object) => knock('/api/session/passkey', { id, response });
export const lock = () => knock('/api/session/lock', {});
export const signOut = () => knock('/api/session/end', {});

export const readAccount = () => ask<OwnAccount>('/api/account');
export const changePassword = (now: string, next: string) => ask('/api/account/password', 'PUT', { now, next });
export const changePin = (password: string, pin: string | null) => ask('/api/account/pin', 'PUT', { password, pin });
export const goToBranch = (branchId: string) => ask('/api/account/branch', 'PUT', { branchId });
export const endSession = (id: string) => ask(`/api/account/sessions/${id}/end`, 'POST');
export const signOutEverywhere = () => ask('/api/session/end-everywhere', 'POST');
export const newPasskey = () => ask<{ id: string; options: object }>('/api/account/passkey-question', 'POST');
export const keepPasskey = (id: string, name: string, response: object) =>
  ask('/api/account/passkeys', 'POST', { id, name, response });
export const removePasskey = (id: string) => ask(`/api/account/passkeys/${encodeURIComponent(id)}/removal`, 'POST');

export const readPeople = () => ask<People>('/api/people');
export const addPerson = (body: object) => ask<{ id: string; code: string }>('/api/people', 'POST', body);
export const changePerson = (id: string, part: Partial<Standing>) => ask(`/api/people/${id}`, 'PUT', part);
export const giveCode = (id: string) => ask<{ code: string }>(`/api/people/${id}/code`, 'POST');
export const undoChange = (id: string) => ask(`/api/people/changes/${id}/undo`, 'POST');
export const addBranch = (name: string, place: string) => ask('/api/branches', 'POST', { name, place });
