-- Tasks of aftercare name the kit as the plan does: those made before know only its name inside the file.
insert into aftercare_stale select placement_id from aftercare_placement on conflict do nothing;
