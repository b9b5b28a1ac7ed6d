// How are passwords and PINs kept? argon2id with the parameters that OWASP names (19 MiB, 2 passes, 1 lane; read from
// memory). A check against nobody takes as long as one against somebody.
import { hash, verify } from '@node-rs/argon2';

/** 2 = argon2id. */
const parameters = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1, outputLen: 32 } as const;

/** The same letters typed on two keyboards are the same password. */
const plainOf = (secret: string): string => secret.normalize('NFC');

export const hashOf = async (secret: string): Promise<string> => await hash(plainOf(secret), parameters);

let nobody: Promise<string> | undefined;

/** @param kept null when there is no such person: the work is done all the same */
export async function isSecret(kept: string | null, given: string): Promise<boolean> {
  nobody ??= hashOf('a password that nobody has');
  const against = kept ?? (await nobody);
  const same = await verify(against, plainOf(given));
  return same && kept !== null;
}
