-- The own words of a buyer can be taken out of what is kept: by a named person, for a reason, as one erasure. Rows that
-- are only added to give way to that alone, and the chain holds a link for each (migrations/0070-chain.sql).

create table erasure (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  enquiry_id uuid not null unique references enquiry (id),
  reason text not null,
  -- How many rows of which table were changed.
  rows_changed jsonb not null,
  at timestamptz not null,
  by text not null
);

create trigger erasure_kept before update or delete on erasure
  for each row execute function refuse_change();

create or replace function refuse_change() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and nullif(current_setting('warmstead.erased_by', true), '') is not null
    and tg_table_name in ('enquiry_version', 'plan_result', 'proof_result', 'placement_event', 'reading_file',
      'reading_file_answer', 'reading_file_withdrawal', 'live_source', 'animal_event') then
    return new;
  end if;
  raise exception 'rows of % are kept as they are; add a new one', tg_table_name using errcode = 'WS001';
end $$;
