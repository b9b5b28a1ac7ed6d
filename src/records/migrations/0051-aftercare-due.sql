-- What follows from placements, plans, proofs and animals, worked out once and kept so that a list of what is due is one
-- look at an index. Nothing here is told by anybody: every row can be made anew from the tables before.

-- One row for each placement that was ever released.
create table aftercare_placement (
  placement_id uuid primary key references placement (id),
  branch_id uuid not null references branch (id),
  species_id text not null,
  released_on date not null,
  -- Latest day of which anything was heard from the new home; null = nothing yet.
  heard_on date,
  died_on date,
  returned_on date,
  -- Unguessable enough to name a calendar entry by, and no key to anything.
  calendar_name uuid not null,
  data_version text not null
);

create index aftercare_placement_of on aftercare_placement (branch_id, species_id);

create table aftercare_due (
  placement_id uuid not null references placement (id),
  key text not null,
  branch_id uuid not null references branch (id),
  kind text not null,
  from_on date not null,
  to_on date not null,
  -- Figures behind the words, what is asked, sources.
  task jsonb not null,
  state text not null check (state in ('open', 'done', 'set-aside')),
  done_on date,
  done_event uuid references placement_event (id),
  -- Grows with every change that a calendar has to hear of.
  sequence integer not null,
  changed_at timestamptz not null,
  primary key (placement_id, key)
);

create index aftercare_due_open on aftercare_due (branch_id, to_on, placement_id, key) include (from_on) where state = 'open';
create index aftercare_due_done on aftercare_due (branch_id, changed_at) where state <> 'open';

-- What a keeper told that asks for a second look, until somebody at the desk has looked.
create table aftercare_concern (
  event_id uuid primary key references placement_event (id),
  placement_id uuid not null references placement (id),
  branch_id uuid not null references branch (id),
  urgency text not null check (urgency in ('now', 'look')),
  told_at timestamptz not null,
  concerns jsonb not null
);

create index aftercare_concern_of on aftercare_concern (branch_id, urgency desc, told_at);
create index aftercare_concern_placement on aftercare_concern (placement_id);

-- Placements whose rows above have to be made anew: marked by whatever they rest on, whoever writes it.
create table aftercare_stale (placement_id uuid primary key references placement (id));

create function mark_aftercare_of_placement() returns trigger language plpgsql as $$
begin
  if new.kind in ('released', 'taken-back', 'reopened', 'refused', 'aftercare') then
    insert into aftercare_stale values (new.placement_id) on conflict do nothing;
  end if;
  return null;
end $$;

create function mark_aftercare_of_enquiry() returns trigger language plpgsql as $$
begin
  insert into aftercare_stale
    select a.placement_id from aftercare_placement a join placement p on p.id = a.placement_id
    where p.enquiry_id = new.enquiry_id order by 1
    on conflict do nothing;
  return null;
end $$;

create function mark_aftercare_of_animal() returns trigger language plpgsql as $$
begin
  insert into aftercare_stale
    select a.placement_id from aftercare_placement a join placement p on p.id = a.placement_id
    where p.animal_id = new.animal_id order by 1
    on conflict do nothing;
  return null;
end $$;

create trigger aftercare_marked after insert on placement_event
  for each row execute function mark_aftercare_of_placement();
create trigger aftercare_marked after insert on proof_result
  for each row execute function mark_aftercare_of_enquiry();
create trigger aftercare_marked after insert on plan_result
  for each row execute function mark_aftercare_of_enquiry();
create trigger aftercare_marked after insert on animal_event
  for each row execute function mark_aftercare_of_animal();

-- Placements that were released before this table was there.
insert into aftercare_stale
  select distinct placement_id from placement_event where kind = 'released'
  on conflict do nothing;
