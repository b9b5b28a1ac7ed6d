-- People who work here, what was done to their accounts, their sessions, passkeys and one-time codes. Secrets are kept
-- only as argon2id (passwords, PINs) or SHA-256 of 128 random bits (session tokens, codes).

create table person (
  id uuid primary key,
  shop_id uuid not null references shop (id),
  -- Written beside everything that this person does, and typed to sign in: one of a kind.
  name text not null,
  role text not null check (role in ('assistant', 'manager', 'inspector', 'owner')),
  -- Empty: every branch of the shop.
  branch_id uuid references branch (id),
  -- Empty until the person has chosen one.
  password_hash text,
  -- Who made the password: 'self', or 'demonstration' while it is the one printed at start.
  password_by text not null default 'self',
  pin_hash text,
  disabled boolean not null default false,
  created_at timestamptz not null,
  created_by text not null
);

create unique index person_name on person (lower(name));

-- What was done to an account, by whom. "was" and "now" hold role, branch and whether it is disabled; never a secret.
create table person_change (
  id uuid primary key,
  person_id uuid not null references person (id),
  kind text not null,
  was jsonb not null,
  now jsonb not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity
);
create index person_change_of on person_change (person_id, seq);

-- A code that lets its holder choose a password once. Without a person: the code of the first start.
create table person_code (
  sha256 text primary key,
  person_id uuid references person (id),
  expires_at timestamptz not null,
  used_at timestamptz,
  withdrawn_at timestamptz,
  at timestamptz not null,
  by text not null
);

create table session (
  id uuid primary key,
  token_sha256 text not null unique,
  person_id uuid not null references person (id),
  branch_id uuid not null references branch (id),
  -- How the person showed who they are: a PIN opens less than a password or a passkey does.
  how text not null check (how in ('password', 'passkey', 'pin')),
  -- When a password or passkey was last given on this device: the absolute limit counts from here.
  proven_at timestamptz not null,
  opened_at timestamptz not null,
  seen_at timestamptz not null,
  locked boolean not null default false,
  ended_at timestamptz,
  ended_why text,
  -- What kind of browser, in a few words.
  device text not null
);
create index session_of on session (person_id, ended_at);

create table passkey (
  -- The credential's own id, base64url.
  id text primary key,
  person_id uuid not null references person (id),
  public_key bytea not null,
  counter bigint not null,
  transports text not null,
  name text not null,
  at timestamptz not null,
  used_at timestamptz,
  removed_at timestamptz
);
create index passkey_of on passkey (person_id);

-- A question that a passkey has to answer, once, within minutes.
create table passkey_challenge (
  id uuid primary key,
  challenge text not null,
  person_id uuid references person (id),
  expires_at timestamptz not null
);

-- Wrong passwords, PINs and codes. "what" is a hash of the name as typed, so that a name that does not exist waits too.
create table sign_in_failure (
  what text primary key,
  failures integer not null,
  wait_until timestamptz not null,
  at timestamptz not null
);

create trigger person_change_kept before update or delete on person_change
  for each row execute function refuse_change();
