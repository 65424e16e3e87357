-- Whoever confirms an arrival by a link has no account: then there is a name and no person.
alter table inventory_custody alter column person_id drop not null;
alter table inventory_custody add column by_name text;
alter table inventory_custody add constraint inventory_custody_by_check check ((person_id is null) = (by_name is not null));
