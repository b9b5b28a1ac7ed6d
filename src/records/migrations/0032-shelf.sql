-- A branch's shelf. Every change is a whole new shelf with who, when and why, so that any earlier one can be put back.

create table shelf_version (
  branch_id uuid not null references branch (id),
  version integer not null check (version > 0),
  document jsonb not null,
  -- What was done: "changed", "brought in" or "put back"; and to which version it went back.
  step text not null check (step in ('changed', 'brought-in', 'put-back')),
  back_to integer,
  why text not null,
  at timestamptz not null,
  by text not null,
  primary key (branch_id, version)
);

create trigger shelf_version_kept before update or delete on shelf_version
  for each row execute function refuse_change();
