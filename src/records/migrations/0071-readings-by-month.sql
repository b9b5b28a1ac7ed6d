-- Live readings by the month they were measured in: a year of them stays as quick as a week, and old months can be
-- moved or packed away one by one.

alter table live_reading rename to live_reading_before;
alter table live_reading_before rename constraint live_reading_pkey to live_reading_before_pkey;

create table live_reading (
  source_id uuid not null references live_source (id),
  -- When it was measured; when it came in is kept beside it.
  measured_at timestamptz not null,
  value double precision not null,
  received_at timestamptz not null,
  primary key (source_id, measured_at)
) partition by range (measured_at);

create trigger live_reading_kept before update or delete on live_reading
  for each row execute function refuse_change();

-- The month of this moment (UTC), made when it is not there. Attached rather than made in place: readers go on.
create function make_reading_month(moment timestamptz) returns void language plpgsql set timezone to 'UTC' as $$
declare
  from_day timestamptz := date_trunc('month', moment);
  name text := 'live_reading_' || to_char(from_day, 'YYYY_MM');
begin
  if to_regclass(name) is not null then
    return;
  end if;
  perform pg_advisory_xact_lock(7430003, 0);
  if to_regclass(name) is not null then
    return;
  end if;
  execute format('create table %I (like live_reading including defaults including constraints including indexes)', name);
  execute format('alter table live_reading attach partition %I for values from (%L) to (%L)',
    name, from_day, from_day + interval '1 month');
end $$;

select make_reading_month(month) from (select distinct date_trunc('month', measured_at at time zone 'UTC') at time zone 'UTC' as month
  from live_reading_before) months;
insert into live_reading select * from live_reading_before;
drop table live_reading_before;
