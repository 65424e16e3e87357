-- A file that somebody is sending in parts. It is no document before all of it is here, so it is no evidence: its parts
-- are deleted when it has become a document, when its sender discards it, or some days after its last part.
create table verification_upload (
    id            uuid        primary key,
    production_id uuid        not null references production_production (id),
    sent_by       uuid        not null references people_person (id),
    sent_name     text        not null constraint verification_upload_name check (length(sent_name) <= 500),
    size_bytes    bigint      not null constraint verification_upload_size check (size_bytes > 0),
    -- SHA-256 of its first bytes: by name, size and this the same file is found again.
    beginning     bytea       not null constraint verification_upload_beginning check (octet_length(beginning) = 32),
    said_subject  text        constraint verification_upload_said_subject
                                  check (said_subject in ('CARD', 'COPY', 'ENCODED_OUTPUT', 'DECODED')),
    said_item_id  uuid        references inventory_item (id),
    delivery_id   uuid        not null,
    last_part_at  timestamptz not null,
    completed_at  timestamptz
);
create unique index verification_upload_same_file
    on verification_upload (production_id, sent_by, sent_name, size_bytes, beginning, said_subject, said_item_id)
    nulls not distinct where completed_at is null;
create index verification_upload_last_part_ix on verification_upload (last_part_at);

create table verification_upload_part (
    upload_id  uuid    not null references verification_upload (id) on delete cascade,
    start_byte bigint  not null constraint verification_upload_part_start check (start_byte >= 0),
    size_bytes integer not null constraint verification_upload_part_size check (size_bytes > 0),
    sha256     bytea   not null constraint verification_upload_part_sha256 check (octet_length(sha256) = 32),
    content    bytea   not null,
    primary key (upload_id, start_byte)
);
-- It stays for minutes: compressing it would cost more than it saves.
alter table verification_upload_part alter column content set storage external;
