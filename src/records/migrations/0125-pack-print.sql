-- How a pack was last written for its keeper: language and units, so that a further copy, from another device too, is the
-- same paper.
create table pack_print (
  id uuid primary key,
  placement_id uuid not null references placement (id),
  language text not null check (language ~ '^[a-z]{2}$'),
  temperature text not null check (temperature in ('C', 'F')),
  length text not null check (length in ('cm', 'in')),
  mass text not null check (mass in ('g', 'oz')),
  at timestamptz not null,
  by text not null,
  seq bigint generated always as identity
);

create index pack_print_of on pack_print (placement_id, seq desc);

create trigger pack_print_kept before update or delete on pack_print
  for each row execute function refuse_change();
