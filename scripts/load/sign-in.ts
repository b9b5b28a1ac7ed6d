// One owner at each desk, signed in: a session in the database for a token that only this run knows.
import type pg from 'pg';
import { newSecret, secretHash } from '../../src/desk/secrets.ts';
import { shops } from './generate.ts';

/** @returns the cookie of each desk, in the order of the shops */
export async function signInDesks(pool: pg.Pool): Promise<readonly string[]> {
  const cookies: string[] = [];
  for (let desk = 0; desk < shops; desk++) {
    const token = newSecret();
    await pool.query(
      `insert into person (id, shop_id, name, role, created_at, created_by)
       select md5('person' || $1)::uuid, md5('shop' || $1)::uuid, 'Desk ' || $1, 'owner', now(), 'load'`,
      [String(desk)],
    );
    await pool.query(
      `insert into session (id, token_sha256, person_id, branch_id, how, proven_at, opened_at, seen_at, device)
       select gen_random_uuid(), $2, md5('person' || $1)::uuid, md5('branch' || $1)::uuid, 'password', now(), now(), now(), 'program'`,
      [String(desk), secretHash(token)],
    );
    cookies.push(`warmstead-session=${token}`);
  }
  return cookies;
}
