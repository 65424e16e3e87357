-- Whether a manifest came in a bag of a version before 1.0, in whose paths a percent sign is just that.
alter table verification_archive_member add column plain_percents boolean not null default false;
