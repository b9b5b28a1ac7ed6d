-- A chain over the records that the law wants kept. Each branch has one: a link for each row, which holds the hash of
-- the row's content and the hash of the link before it. Whoever changes, deletes, inserts or reorders a row behind the
-- program's back breaks it; "warmstead verify-records" names the first broken link.

-- Order of answers does not hang on a clock that may have jumped.
alter table plan_result add column seq bigint generated always as identity;
alter table proof_result add column seq bigint generated always as identity;
create index plan_result_in_order on plan_result (enquiry_id, seq desc);
create index proof_result_in_order on proof_result (enquiry_id, seq desc);

create trigger animal_kept before update or delete on animal
  for each row execute function refuse_change();

-- Which tables are in the chain, by which columns a row is named, and whose branch it belongs to ($1: the row as JSON).
create table chain_table (
  name text primary key,
  key_columns text[] not null,
  branch_of text not null
);

create table chain_link (
  branch_id uuid not null references branch (id),
  number bigint not null check (number >= 1),
  table_name text not null,
  row_key text not null,
  -- "erased": a later link for a row of which personal data were taken out, by a person and for a reason that are named.
  what text not null check (what in ('added', 'erased')),
  -- Columns that the row's hash is made of, so that a column added later breaks nothing.
  columns text[] not null,
  row_sha256 text not null,
  -- When and by whom the row says it was written.
  at text not null,
  by text not null,
  previous text not null,
  sha256 text not null,
  primary key (branch_id, number)
);
create index chain_link_of_row on chain_link (table_name, row_key);
create trigger chain_link_kept before update or delete on chain_link
  for each row execute function refuse_change();
create trigger chain_link_kept_whole before truncate on chain_link
  for each statement execute function refuse_change();

-- Adds one link at the end of a branch's chain. Writers of one branch go one after the other, only while they commit.
create function chain_add(branch uuid, of_table text, key text, kind text, content jsonb, said_at text, said_by text)
returns void language plpgsql set timezone to 'UTC' set extra_float_digits to 1 as $$
declare
  last record;
  names text[];
  row_hash text;
begin
  if branch is null then
    raise exception 'row % of % belongs to no branch', key, of_table using errcode = 'WS002';
  end if;
  perform pg_advisory_xact_lock(7430002, hashtext(branch::text));
  select number, sha256 into last from chain_link where branch_id = branch order by number desc limit 1;
  names := array(select k from jsonb_object_keys(content) as k order by k collate "C");
  row_hash := encode(sha256(convert_to(content::text, 'UTF8')), 'hex');
  insert into chain_link (branch_id, number, table_name, row_key, what, columns, row_sha256, at, by, previous, sha256)
  values (branch, coalesce(last.number, 0) + 1, of_table, key, kind, names, row_hash, said_at, said_by,
    coalesce(last.sha256, ''),
    chain_hash(coalesce(last.sha256, ''), branch, coalesce(last.number, 0) + 1, of_table, key, kind, names, row_hash, said_at, said_by));
end $$;

create function chain_hash(previous text, branch uuid, number bigint, of_table text, key text, kind text, names text[],
  row_hash text, said_at text, said_by text) returns text language sql immutable as $$
  select encode(sha256(convert_to(concat_ws(E'\n', previous, branch, number, of_table, key, kind,
    array_to_string(names, ','), row_hash, said_at, said_by), 'UTF8')), 'hex')
$$;

-- Runs when the transaction commits, so that the lock of the chain is always the last one taken.
create function chain_row() returns trigger language plpgsql set timezone to 'UTC' set extra_float_digits to 1 as $$
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
  if tg_table_name in ('reading_file', 'animal_photo') then
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

-- Puts a table into the chain: call it from the migration that makes the table.
create function keep_in_chain(of_table text, key_columns text[], branch_of text) returns void language plpgsql as $$
begin
  insert into chain_table values (of_table, key_columns, branch_of);
  execute format('create constraint trigger %I after insert or update on %I deferrable initially deferred
    for each row execute function chain_row()', of_table || '_chained', of_table);
  execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
    of_table || '_kept_whole', of_table);
end $$;

select keep_in_chain(name, keys, branch_of) from (values
  ('animal', '{id}'::text[],
    'select id from branch where shop_id = ($1 ->> ''shop_id'')::uuid order by created_at, id limit 1'),
  ('animal_fact', '{id}', 'select ($1 ->> ''branch_id'')::uuid'),
  ('animal_event', '{id}', 'select ($1 ->> ''branch_id'')::uuid'),
  ('animal_photo', '{id}',
    'select b.id from animal a join branch b on b.shop_id = a.shop_id where a.id = ($1 ->> ''animal_id'')::uuid order by b.created_at, b.id limit 1'),
  ('enquiry_version', '{enquiry_id,version}', 'select branch_id from enquiry where id = ($1 ->> ''enquiry_id'')::uuid'),
  ('plan_result', '{id}', 'select branch_id from enquiry where id = ($1 ->> ''enquiry_id'')::uuid'),
  ('proof_result', '{id}', 'select branch_id from enquiry where id = ($1 ->> ''enquiry_id'')::uuid'),
  ('placement', '{id}', 'select ($1 ->> ''branch_id'')::uuid'),
  ('placement_event', '{id}', 'select branch_id from placement where id = ($1 ->> ''placement_id'')::uuid'),
  ('instrument', '{id}', 'select ($1 ->> ''branch_id'')::uuid'),
  ('instrument_check', '{id}', 'select branch_id from instrument where id = ($1 ->> ''instrument_id'')::uuid'),
  ('reading_file', '{id}', 'select branch_id from enquiry where id = ($1 ->> ''enquiry_id'')::uuid'),
  ('reading_file_answer', '{seq}',
    'select e.branch_id from reading_file f join enquiry e on e.id = f.enquiry_id where f.id = ($1 ->> ''file_id'')::uuid'),
  ('reading_file_withdrawal', '{file_id}',
    'select e.branch_id from reading_file f join enquiry e on e.id = f.enquiry_id where f.id = ($1 ->> ''file_id'')::uuid'),
  ('hand_reading', '{id}', 'select branch_id from enquiry where id = ($1 ->> ''enquiry_id'')::uuid'),
  ('overlay', '{id}', 'select ($1 ->> ''branch_id'')::uuid'),
  ('overlay_withdrawal', '{overlay_id}', 'select branch_id from overlay where id = ($1 ->> ''overlay_id'')::uuid')
) as tables (name, keys, branch_of);

-- Links for rows that have none: those that stood before there was a chain. @returns how many
create function chain_backfill() returns bigint language plpgsql
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
          and not (attname = 'bytes' and one.name in ('reading_file', 'animal_photo'))),
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

select chain_backfill();
