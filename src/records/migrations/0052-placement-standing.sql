-- Where each placement stands now, kept in step by the events themselves: lists of what is open need not read them all.

create table placement_standing (
  placement_id uuid primary key references placement (id),
  branch_id uuid not null references branch (id),
  state text not null check (state in ('open', 'released', 'refused')),
  changed_at timestamptz not null
);

create index placement_standing_of on placement_standing (branch_id, state, changed_at desc, placement_id);

insert into placement_standing
  select p.id, p.branch_id,
    coalesce((select case e.kind when 'released' then 'released' when 'refused' then 'refused' else 'open' end
      from placement_event e where e.placement_id = p.id and e.kind in ('released', 'refused', 'reopened', 'taken-back')
      order by e.seq desc limit 1), 'open'),
    coalesce((select max(e.at) from placement_event e where e.placement_id = p.id), p.at)
  from placement p;

create function placement_stands_open() returns trigger language plpgsql as $$
begin
  insert into placement_standing values (new.id, new.branch_id, 'open', new.at);
  return null;
end $$;

create function placement_stands_anew() returns trigger language plpgsql as $$
begin
  update placement_standing set changed_at = greatest(changed_at, new.at),
    state = case new.kind when 'released' then 'released' when 'refused' then 'refused' when 'reopened' then 'open'
      when 'taken-back' then 'open' else state end
    where placement_id = new.placement_id;
  return null;
end $$;

create trigger placement_standing_first after insert on placement
  for each row execute function placement_stands_open();
create trigger placement_standing_next after insert on placement_event
  for each row execute function placement_stands_anew();
