-- Readings of homes, the instruments that took them, proofs, keepers' links and live sources. What was read is only
-- added to; what no longer counts is withdrawn by a row of its own.

create table instrument (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  name text not null,
  at timestamptz not null,
  by text not null
);

create table instrument_check (
  id uuid primary key,
  instrument_id uuid not null references instrument (id),
  quantity text not null check (quantity in ('tempC', 'rhPct')),
  how text not null check (how in ('ice', 'salt', 'beside')),
  truth double precision not null,
  shown double precision not null,
  at timestamptz not null,
  by text not null
);

-- A logger file as it came. Its meaning is worked out anew each time, from the bytes and the latest answers.
create table reading_file (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  name text not null,
  bytes bytea not null,
  sha256 text not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity,
  unique (enquiry_id, sha256)
);

-- What a person said about a file: order of dates, units, places. The newest row counts.
create table reading_file_answer (
  file_id uuid not null references reading_file (id),
  hints jsonb not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity primary key
);

create table reading_file_withdrawal (
  file_id uuid primary key references reading_file (id),
  why text not null,
  at timestamptz not null,
  by text not null
);

-- A link by which a keeper reaches one home without an account. Only the hash of its secret is kept.
create table keeper_link (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  secret_sha256 text not null unique,
  expires_at timestamptz not null,
  at timestamptz not null,
  by text not null
);

create table keeper_link_withdrawal (
  link_id uuid primary key references keeper_link (id),
  at timestamptz not null,
  by text not null
);

-- Three numbers and a time. wall_s: seconds since 1970 on the home's own clock.
create table hand_reading (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  link_id uuid references keeper_link (id),
  wall_s bigint not null,
  values_c jsonb not null,
  client_key text not null,
  at timestamptz not null,
  by text not null,
  unique (enquiry_id, client_key)
);

create table live_source (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  label text not null,
  place text not null,
  quantity text not null check (quantity in ('tempC', 'rhPct', 'powerW')),
  -- How often it should speak; after three times this long without a word it is unknown.
  interval_s integer not null check (interval_s between 5 and 86400),
  secret_sha256 text not null unique,
  -- Topic of a message broker, and the key of the number in a JSON message; both may be missing.
  topic text,
  value_key text,
  instrument_id uuid references instrument (id),
  at timestamptz not null,
  by text not null
);
create index live_source_topic on live_source (topic);

create table live_reading (
  source_id uuid not null references live_source (id),
  -- When it was measured; when it came in is kept beside it.
  measured_at timestamptz not null,
  value double precision not null,
  received_at timestamptz not null,
  primary key (source_id, measured_at)
);

create table proof_result (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  enquiry_version integer not null,
  answer jsonb not null,
  -- Which files (by hash), how many hand and live readings went in.
  inputs jsonb not null,
  model_version text not null,
  data_version text not null,
  at timestamptz not null,
  by text not null,
  foreign key (enquiry_id, enquiry_version) references enquiry_version (enquiry_id, version)
);
create index proof_result_newest on proof_result (enquiry_id, at desc);

do $$
declare one text;
begin
  foreach one in array array['instrument', 'instrument_check', 'reading_file', 'reading_file_answer',
    'reading_file_withdrawal', 'keeper_link', 'keeper_link_withdrawal', 'hand_reading', 'live_source', 'live_reading',
    'proof_result']
  loop
    execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
      one || '_kept', one);
  end loop;
end $$;
