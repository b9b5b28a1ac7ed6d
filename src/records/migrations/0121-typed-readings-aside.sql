-- Whether a typed reading counts: it does until somebody sets it aside for a reason, and again when that is taken back.
-- The newest row counts; the reading itself stays as it was typed.
create table hand_reading_standing (
  seq bigint generated always as identity primary key,
  reading_id uuid not null references hand_reading (id),
  counts boolean not null,
  why text not null,
  at timestamptz not null,
  by text not null
);
create index hand_reading_standing_newest on hand_reading_standing (reading_id, seq desc);
create trigger hand_reading_standing_kept before update or delete on hand_reading_standing
  for each row execute function refuse_change();

select keep_in_chain('hand_reading_standing', '{seq}',
  'select e.branch_id from hand_reading h join enquiry e on e.id = h.enquiry_id where h.id = ($1 ->> ''reading_id'')::uuid');

-- A reason is somebody's own words, which an erasure takes out.
create or replace function refuse_change() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and nullif(current_setting('warmstead.erased_by', true), '') is not null
    and tg_table_name in ('enquiry_version', 'plan_result', 'proof_result', 'placement_event', 'reading_file',
      'reading_file_answer', 'reading_file_withdrawal', 'hand_reading_standing', 'live_source', 'animal_event') then
    return new;
  end if;
  raise exception 'rows of % are kept as they are; add a new one', tg_table_name using errcode = 'WS001';
end $$;
