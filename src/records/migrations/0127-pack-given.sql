-- A pack as it was given: the very file, so that a further copy years later is byte for byte the paper that the keeper has,
-- whatever has changed since. "said" is what stood in it, part by part, to tell what differs today.
create table pack_given (
  id uuid primary key,
  placement_id uuid not null references placement (id),
  -- State of the placement when it was made: "open" makes it a draft, which it says.
  state text not null,
  language text not null check (language ~ '^[a-z]{2}$'),
  temperature text not null check (temperature in ('C', 'F')),
  length text not null check (length in ('cm', 'in')),
  mass text not null check (mass in ('g', 'oz')),
  said jsonb not null,
  -- Empty once the words of its buyer were erased.
  bytes bytea not null,
  sha256 text not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity
);
create index pack_given_of on pack_given (placement_id, seq desc);
create trigger pack_given_kept before update or delete on pack_given
  for each row execute function refuse_change();

-- It holds words of a buyer, which an erasure takes out, with the file.
create or replace function refuse_change() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' and nullif(current_setting('warmstead.erased_by', true), '') is not null
    and tg_table_name in ('enquiry_version', 'plan_result', 'proof_result', 'placement_event', 'reading_file',
      'reading_file_answer', 'reading_file_withdrawal', 'hand_reading_standing', 'live_source', 'animal_event',
      'pack_given') then
    return new;
  end if;
  raise exception 'rows of % are kept as they are; add a new one', tg_table_name using errcode = 'WS001';
end $$;

-- Files are in the chain by their hash; as before, with one table more.
create or replace function chain_row() returns trigger language plpgsql set timezone to 'UTC' set extra_float_digits to 1 as $$
declare
  known chain_table%rowtype;
  content jsonb;
  branch uuid;
  erased_by text := nullif(current_setting('warmstead.erased_by', true), '');
begin
  if tg_op = 'UPDATE' and erased_by is null then
    return null;
  end if;
  select * into known from chain_table where name = tg_table_name;
  -- Files are in the chain by their hash.
  if tg_table_name in ('reading_file', 'animal_photo', 'pack_given') then
    new.bytes := null;
    content := to_jsonb(new) - 'bytes';
  else
    content := to_jsonb(new);
  end if;
  execute known.branch_of into branch using content;
  perform chain_add(branch, tg_table_name,
    (select string_agg(content ->> k, '/' order by n) from unnest(known.key_columns) with ordinality as key (k, n)),
    case tg_op when 'UPDATE' then 'erased' else 'added' end,
    content,
    coalesce(content ->> 'recorded_at', content ->> 'at', content ->> 'created_at', ''),
    coalesce(erased_by, content ->> 'by', content ->> 'created_by', ''));
  return null;
end $$;

create or replace function chain_backfill() returns bigint language plpgsql
set timezone to 'UTC' set extra_float_digits to 1 as $$
declare
  one record;
  parts text := '';
  added bigint := 0;
begin
  for one in select t.*, (select string_agg(format('(x ->> %L)', k), ' || ''/'' || ' order by n)
      from unnest(t.key_columns) with ordinality as key (k, n)) as key_of from chain_table t order by name loop
    parts := parts || case when parts = '' then '' else ' union all ' end || format(
      'select %L as of_table, %s as key, x as content, (%s) as branch from (select to_jsonb(r) as x from (select %s from %I) r) rows_of',
      one.name, one.key_of, replace(one.branch_of, '$1', 'x'),
      (select string_agg(quote_ident(attname), ', ' order by attnum) from pg_attribute
        where attrelid = one.name::regclass and attnum > 0 and not attisdropped
          and not (attname = 'bytes' and one.name in ('reading_file', 'animal_photo', 'pack_given'))),
      one.name);
  end loop;
  for one in execute format(
    'select * from (%s) every where not exists (select 1 from chain_link l where l.table_name = every.of_table and l.row_key = every.key)
     order by branch, coalesce(content ->> ''recorded_at'', content ->> ''at'', content ->> ''created_at'')::timestamptz, of_table,
       (content ->> ''seq'')::bigint, key', parts) loop
    perform chain_add(one.branch, one.of_table, one.key, 'added', one.content,
      coalesce(one.content ->> 'recorded_at', one.content ->> 'at', one.content ->> 'created_at', ''),
      coalesce(one.content ->> 'by', one.content ->> 'created_by', ''));
    added := added + 1;
  end loop;
  return added;
end $$;

select keep_in_chain('pack_given', '{id}',
  'select branch_id from placement where id = ($1 ->> ''placement_id'')::uuid');
