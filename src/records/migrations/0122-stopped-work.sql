-- How work ended that somebody waited for and could stop: what was first, keeping its outcome or stopping it? One row decides,
-- for all processes together. Forgotten after a day.
create table work_end (
  id uuid primary key,
  ended text not null check (ended in ('kept', 'stopped')),
  at timestamptz not null
);
create index work_end_at on work_end (at);
