// The tables of accounts as TypeScript sees them (migrations/0060-accounts.sql).
import type { ColumnType, Generated, JSONColumnType } from 'kysely';

type Fixed<T> = ColumnType<T, T, never>;
type Json = JSONColumnType<Record<string, unknown>, string, never>;

export type PersonRole = 'assistant' | 'manager' | 'inspector' | 'owner';
export type SessionHow = 'password' | 'passkey' | 'pin';

export interface AccountTables {
  person: {
    id: Fixed<string>;
    shop_id: Fixed<string>;
    name: string;
    role: PersonRole;
    branch_id: string | null;
    password_hash: string | null;
    password_by: Generated<string>;
    pin_hash: string | null;
    disabled: Generated<boolean>;
    created_at: Fixed<Date>;
    created_by: Fixed<string>;
  };
  person_change: {
    id: Fixed<string>;
    person_id: Fixed<string>;
    kind: Fixed<string>;
    was: Json;
    now: Json;
    at: Fixed<Date>;
    by: Fixed<string>;
    seq: Generated<string>;
  };
  person_code: {
    sha256: Fixed<string>;
    person_id: Fixed<string | null>;
    expires_at: Fixed<Date>;
    used_at: ColumnType<Date | null, Date | null | undefined, Date>;
    withdrawn_at: ColumnType<Date | null, Date | null | undefined, Date | null>;
    at: Fixed<Date>;
    by: Fixed<string>;
  };
  session: {
    id: Fixed<string>;
    token_sha256: Fixed<string>;
    person_id: Fixed<string>;
    branch_id: string;
    how: SessionHow;
    proven_at: Date;
    opened_at: Fixed<Date>;
    seen_at: Date;
    locked: Generated<boolean>;
    ended_at: ColumnType<Date | null, Date | null | undefined, Date>;
    ended_why: ColumnType<string | null, string | null | undefined, string>;
    device: Fixed<string>;
  };
  passkey: {
    id: Fixed<string>;
    person_id: Fixed<string>;
    public_key: Fixed<Buffer>;
    counter: ColumnType<string, number, number>;
    transports: Fixed<string>;
    name: Fixed<string>;
    at: Fixed<Date>;
    used_at: ColumnType<Date | null, Date | null | undefined, Date>;
    removed_at: ColumnType<Date | null, Date | null | undefined, Date | null>;
  };
  passkey_challenge: {
    id: Fixed<string>;
    challenge: Fixed<string>;
    person_id: Fixed<string | null>;
    expires_at: Fixed<Date>;
  };
  sign_in_failure: {
    what: Fixed<string>;
    failures: number;
    wait_until: Date;
    at: Date;
  };
}
