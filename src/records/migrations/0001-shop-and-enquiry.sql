-- Shops, their branches, enquiries with every version they ever had, and the answers computed for them.
-- Times come from the program's clock, never from the database's, so that an action has one time.

create table shop (
  id uuid primary key,
  name text not null,
  created_at timestamptz not null
);

create table branch (
  id uuid primary key,
  shop_id uuid not null references shop (id),
  name text not null,
  created_at timestamptz not null
);

-- The enquiry as it stands now; "document" is what the desk entered, enclosure and all.
create table enquiry (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  document jsonb not null,
  version integer not null check (version >= 1),
  created_at timestamptz not null,
  updated_at timestamptz not null,
  created_by text not null
);

create index enquiry_newest on enquiry (branch_id, updated_at desc);

-- What stood there before: one row for each version, also for the present one.
create table enquiry_version (
  enquiry_id uuid not null references enquiry (id),
  version integer not null check (version >= 1),
  document jsonb not null,
  at timestamptz not null,
  by text not null,
  primary key (enquiry_id, version)
);

-- An answer with all that is needed to know where it came from.
create table plan_result (
  id uuid primary key,
  enquiry_id uuid not null references enquiry (id),
  enquiry_version integer not null,
  answer jsonb not null,
  model_version text not null,
  data_version text not null,
  at timestamptz not null,
  by text not null,
  foreign key (enquiry_id, enquiry_version) references enquiry_version (enquiry_id, version)
);

create index plan_result_newest on plan_result (enquiry_id, at desc);

-- History is corrected by a new row, never overwritten.
create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception 'rows of % are kept as they are; add a new one', tg_table_name using errcode = 'WS001';
end $$;

create trigger enquiry_version_kept before update or delete on enquiry_version
  for each row execute function refuse_change();
create trigger plan_result_kept before update or delete on plan_result
  for each row execute function refuse_change();
