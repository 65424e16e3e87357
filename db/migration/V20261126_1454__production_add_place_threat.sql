-- The disaster that threatens a place, in one word such as flood; empty where nobody said. Equal words are one threat.
alter table production_place add column threat text not null default '';
