-- Addresses at which a calendar program fetches aftercare: of a whole branch, or of one placement. Only the hash of the
-- secret in the address is kept; one that was taken back stays as a row of its own.

create table calendar_feed (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  -- Null: every placement of the branch.
  placement_id uuid references placement (id),
  language text not null check (language in ('en', 'de')),
  secret_sha256 text not null unique,
  at timestamptz not null,
  by text not null
);

create index calendar_feed_of on calendar_feed (branch_id, placement_id);

create table calendar_feed_withdrawal (
  feed_id uuid primary key references calendar_feed (id),
  at timestamptz not null,
  by text not null
);

create trigger calendar_feed_kept before update or delete on calendar_feed
  for each row execute function refuse_change();
create trigger calendar_feed_withdrawal_kept before update or delete on calendar_feed_withdrawal
  for each row execute function refuse_change();
