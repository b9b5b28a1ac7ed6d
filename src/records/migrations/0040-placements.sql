-- One animal going to one home, and everything that is said and done on the way. What happened is only added to.

create table placement (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  enquiry_id uuid not null references enquiry (id),
  animal_id uuid not null references animal (id),
  at timestamptz not null,
  by text not null
);

create index placement_newest on placement (branch_id, at desc);
create index placement_of_enquiry on placement (enquiry_id);
create index placement_of_animal on placement (animal_id);

-- "token" is made by the device: the same thing sent again after a power cut is one row.
create table placement_event (
  id uuid primary key,
  placement_id uuid not null references placement (id),
  kind text not null check (kind in ('statement', 'override', 'released', 'refused', 'reopened', 'taken-back', 'aftercare')),
  body jsonb not null,
  token uuid not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity,
  unique (placement_id, token)
);

create index placement_event_in_order on placement_event (placement_id, seq);

create trigger placement_kept before update or delete on placement
  for each row execute function refuse_change();
create trigger placement_event_kept before update or delete on placement_event
  for each row execute function refuse_change();
