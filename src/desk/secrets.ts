// Secrets that nobody can guess, and the only form in which they are kept.
import { createHash, randomBytes } from 'node:crypto';

/** 128 bits in letters that survive a QR code and a phone call's spelling. */
export const newSecret = (): string => randomBytes(16).toString('base64url');

export const secretHash = (secret: string): string => createHash('sha256').update(secret).digest('hex');
