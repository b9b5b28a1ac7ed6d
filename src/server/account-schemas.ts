// Forms of the requests about accounts.
import { Type } from 'typebox';

const closed = { additionalProperties: false } as const;
const name = Type.String({ maxLength: 120 });
/** Longer than any password that is taken, so that the rule can say "too long" in its own words. */
const password = Type.String({ maxLength: 1024 });
const pin = Type.String({ maxLength: 20 });
const code = Type.String({ maxLength: 60 });
const id = Type.String({ pattern: '^[0-9a-f-]{36}$' });
const place = Type.String({ maxLength: 60 });
const branchId = Type.Union([id, Type.Null()]);
const role = Type.Union([
  Type.Literal('assistant'),
  Type.Literal('manager'),
  Type.Literal('inspector'),
  Type.Literal('owner'),
]);
/** What a browser's passkey interface gives; checked in full by the library that reads it. */
const response = Type.Object({ id: Type.String({ maxLength: 1024 }) }, { additionalProperties: true });

export const signInBody = Type.Object({ name, password }, closed);
export const setUpBody = Type.Object({ code, name, password, shopName: name, branchName: name, place }, closed);
export const codeBody = Type.Object({ code, password }, closed);
export const switchBody = Type.Object({ personId: id, pin }, closed);
export const proveBody = Type.Object({ password }, closed);
export const passwordBody = Type.Object({ now: password, next: password }, closed);
export const pinBody = Type.Object({ password, pin: Type.Union([pin, Type.Null()]) }, closed);
export const branchChoiceBody = Type.Object({ branchId: id }, closed);
export const personBody = Type.Object({ name, role, branchId }, closed);
export const standingBody = Type.Object(
  { role: Type.Optional(role), branchId: Type.Optional(branchId), disabled: Type.Optional(Type.Boolean()) },
  { ...closed, minProperties: 1 },
);
export const branchBody = Type.Object({ name, place }, closed);
export const answerBody = Type.Object({ id, response }, closed);
export const passkeyBody = Type.Object({ id, name, response }, closed);
export const accountParams = Type.Object({ id });
export const passkeyParams = Type.Object({ id: Type.String({ pattern: '^[A-Za-z0-9_-]{8,1024}$' }) });
