-- What clears a medium is said for each kind that comes back into use, not for cards only; a copy's last check may have
-- to be recent, and weaker proof may be let count. Of media other than cards at first as much is asked as of cards.
alter table production_clearing_policy
    add column subject             text    not null default 'CARD' check (subject in ('CARD', 'DRIVE', 'ARRAY', 'TAPE')),
    add column checked_within_days int     check (checked_within_days between 1 and 3650),
    add column source_hash_needed  boolean not null default true,
    add column round_trip_needed   boolean not null default true;
alter table production_clearing_policy alter column subject drop default;
alter table production_clearing_policy drop constraint production_clearing_policy_pkey;
alter table production_clearing_policy add constraint production_clearing_policy_pk primary key (production_id, subject);
insert into production_clearing_policy (production_id, subject, proven_copies, items, media_kinds, places, off_site)
select c.production_id, kind, c.proven_copies, c.items, c.media_kinds, c.places, c.off_site
from production_clearing_policy c cross join unnest(array['DRIVE', 'ARRAY', 'TAPE']) kind;
