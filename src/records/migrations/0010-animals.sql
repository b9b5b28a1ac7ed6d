-- Animals: who they are, what the register says of them, everything that happened to them, photographs, and the
-- look-overs that are half done. Facts and entries are only added; a correction names the one it corrects.

-- Whose law holds here; a key of the places in data/law.json.
alter table branch add column if not exists place text not null default 'england';

create table animal (
  id uuid primary key,
  shop_id uuid not null references shop (id),
  created_at timestamptz not null,
  created_by text not null
);

-- One row for each time that a field of the register was said; the newest holds, the earlier ones stay.
create table animal_fact (
  id uuid primary key,
  animal_id uuid not null references animal (id),
  field text not null,
  value text not null,
  -- Why it was said anew; empty the first time.
  reason text not null,
  branch_id uuid not null references branch (id),
  at timestamptz not null,
  by text not null,
  -- Order in which rows were added, for rows of one moment.
  seq bigint generated always as identity
);

create index animal_fact_newest on animal_fact (animal_id, field, at desc, seq desc);

-- One row for each thing that happened or was done. "corrects" makes the earlier row history; a null body withdraws it.
create table animal_event (
  id uuid primary key,
  animal_id uuid not null references animal (id),
  kind text not null,
  happened_on date not null,
  happened_at timestamptz not null,
  body jsonb,
  corrects uuid unique references animal_event (id),
  reason text not null,
  branch_id uuid not null references branch (id),
  recorded_at timestamptz not null,
  by text not null,
  -- Given by the device that wrote it, so that sending it twice writes it once.
  client_key text unique,
  seq bigint generated always as identity,
  check (corrects is not null or body is not null)
);

create index animal_event_of on animal_event (animal_id, kind, happened_at, seq);

-- Where each animal is: derived from entries of kind "movement", kept here so that the round and lists are quick.
create table animal_whereabouts (
  animal_id uuid primary key references animal (id),
  branch_id uuid not null references branch (id),
  enclosure text not null,
  gone boolean not null
);

create index animal_whereabouts_of on animal_whereabouts (branch_id, gone, enclosure);

create table animal_photo (
  id uuid primary key,
  animal_id uuid not null references animal (id),
  media_type text not null check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
  bytes bytea not null,
  sha256 text not null,
  at timestamptz not null,
  by text not null
);

create index animal_photo_of on animal_photo (animal_id, at);

-- A look-over that was interrupted; one for each animal, gone when it is finished.
create table examination_draft (
  animal_id uuid primary key references animal (id),
  document jsonb not null,
  updated_at timestamptz not null,
  by text not null
);

create trigger animal_fact_kept before update or delete on animal_fact
  for each row execute function refuse_change();
create trigger animal_event_kept before update or delete on animal_event
  for each row execute function refuse_change();
create trigger animal_photo_kept before update or delete on animal_photo
  for each row execute function refuse_change();
