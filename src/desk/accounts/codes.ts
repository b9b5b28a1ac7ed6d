// One-time codes and session tokens: how they are made, written and recognised. Only their hashes are kept.
import { randomBytes } from 'node:crypto';
import type { AccountWriter } from '../../records/people.ts';
import { insertCode } from '../../records/person-codes.ts';
import type { Db } from '../../records/schema.ts';
import { secretHash } from '../secrets.ts';

/** Digits and letters that cannot be taken for one another. */
const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const hourMs = 3_600_000;
/** A code for a person works for a day, that of the first start as long as the program waits for it (our choice). */
const personCodeMs = 24 * hourMs;
const firstStartMs = 365 * 24 * hourMs;

/** 100 bits in four groups of five, to be read from one screen and typed into another. */
export function newCode(): string {
  const text = [...randomBytes(20)].map((byte) => letters[byte % 32]).join('');
  return text.match(/.{5}/g)?.join('-') ?? text;
}

/** However it was typed: small letters, spaces, O for 0, I or L for 1. */
export const codeHash = (typed: string): string =>
  secretHash(
    typed
      .toUpperCase()
      .replace(/[^0-9A-Z]/g, '')
      .replaceAll('O', '0')
      .replace(/[IL]/g, '1'),
  );

export const newToken = (): string => randomBytes(32).toString('base64url');

/** @param personId null: the code of the first start. @returns the code, told this once */
export async function giveCode(db: Db, personId: string | null, writer: AccountWriter): Promise<string> {
  const code = newCode();
  const lasts = personId === null ? firstStartMs : personCodeMs;
  await insertCode(db, { sha256: codeHash(code), personId, expiresAt: new Date(writer.at.getTime() + lasts) }, writer);
  return code;
}
