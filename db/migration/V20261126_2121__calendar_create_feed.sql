-- A person's secret address of a production's calendar. Only the SHA-256 of the secret is kept, so that reading the
-- database opens no calendar. A new address is a new row, and a revoked one is gone.
create table calendar_feed (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    person_id     uuid        not null references people_person (id),
    secret_sha256 bytea       not null check (octet_length(secret_sha256) = 32),
    made_at       timestamptz not null,
    fetched_at    timestamptz,
    constraint calendar_feed_person_key unique (production_id, person_id),
    constraint calendar_feed_secret_key unique (secret_sha256)
);
