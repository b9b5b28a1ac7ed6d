-- Whether a kept plan counts: it does until somebody sets it aside, and again when that is taken back. The newest row counts;
-- the plan itself stays as it was worked out.
create table plan_result_standing (
  seq bigint generated always as identity primary key,
  plan_id uuid not null references plan_result (id),
  counts boolean not null,
  at timestamptz not null,
  by text not null
);
create index plan_result_standing_newest on plan_result_standing (plan_id, seq desc);
create trigger plan_result_standing_kept before update or delete on plan_result_standing
  for each row execute function refuse_change();

select keep_in_chain('plan_result_standing', '{seq}',
  'select e.branch_id from plan_result p join enquiry e on e.id = p.enquiry_id where p.id = ($1 ->> ''plan_id'')::uuid');

-- The plans that count.
create view plan_counting as
  select p.* from plan_result p where coalesce(
    (select s.counts from plan_result_standing s where s.plan_id = p.id order by s.seq desc limit 1), true);

-- What is due after a release rests on the newest plan that counts.
create function mark_aftercare_of_plan() returns trigger language plpgsql as $$
begin
  insert into aftercare_stale
    select a.placement_id from aftercare_placement a join placement p on p.id = a.placement_id
    where p.enquiry_id = (select enquiry_id from plan_result where id = new.plan_id) order by 1
    on conflict do nothing;
  return null;
end $$;
create trigger aftercare_marked after insert on plan_result_standing
  for each row execute function mark_aftercare_of_plan();

-- What was kept before a stop came, so that it can be shown and set aside.
alter table work_end add column kept_id uuid;
