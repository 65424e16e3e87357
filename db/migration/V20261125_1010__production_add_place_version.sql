-- So that two people who change the same place notice each other.
alter table production_place add column version int not null default 0;
