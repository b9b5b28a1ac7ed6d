-- How many requests came at one of the narrow doors in this minute, counted for all processes together. "what" is a hash
-- of door and address: nobody is named. Not written ahead, not kept: after a crash of the database it begins anew.
create unlogged table request_count (
  what text primary key,
  n integer not null,
  until timestamptz not null
);
create index request_count_until on request_count (until);
