-- A calendar speaks in the units of whoever gave out its address; null: as people at the place of the branch do.
alter table calendar_feed add column temperature text check (temperature in ('C', 'F'));
alter table calendar_feed add column length text check (length in ('cm', 'in'));
alter table calendar_feed add column mass text check (mass in ('g', 'oz'));
