-- A branch's own values in place of shipped ones, and its policies. Only added to: a value that no longer holds is
-- withdrawn by a row of its own, with who, when and why.

create table overlay (
  id uuid primary key,
  branch_id uuid not null references branch (id),
  -- A fact below the facts, e.g. "species.corn.all.rhPct", or a policy, e.g. "policy.standardId".
  path text not null,
  -- {"low": ..., "high": ...} or {"value": ...}, in the unit that the path names.
  value jsonb not null,
  -- The same parts as they were shipped at that time.
  was jsonb not null,
  why text not null,
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity
);

create index overlay_of on overlay (branch_id, path, seq);

create table overlay_withdrawal (
  overlay_id uuid primary key references overlay (id),
  why text not null,
  at timestamptz not null,
  by text not null
);

create trigger overlay_kept before update or delete on overlay
  for each row execute function refuse_change();
create trigger overlay_withdrawal_kept before update or delete on overlay_withdrawal
  for each row execute function refuse_change();
