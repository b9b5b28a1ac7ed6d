-- A calendar speaks any language that the program has words for, not English and German alone.
alter table calendar_feed drop constraint calendar_feed_language_check;
alter table calendar_feed add constraint calendar_feed_language_code check (language ~ '^[a-z]{2}$');
