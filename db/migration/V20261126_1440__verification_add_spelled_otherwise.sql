-- Files that are there with equal digests under a path that is the same but for its spelling.
alter table verification_verdict add column spelled_otherwise bigint not null default 0;
