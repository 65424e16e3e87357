-- What a production does that Rollbook can't see, as somebody says: content is checked for viruses, originals are read
-- write-protected.
alter table production_production
    add column virus_checked boolean not null default false,
    add column write_blocked boolean not null default false;
