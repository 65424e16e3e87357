-- An uploaded document, byte for byte. The bytes are in chunks, each a zstd frame of its own.
create table verification_document (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    sha256        bytea       not null check (octet_length(sha256) = 32),
    file_name     text        not null,
    size_bytes    bigint      not null check (size_bytes >= 0),
    uploaded_at   timestamptz not null,
    uploaded_by   uuid        not null references people_person (id),
    said_subject  text        check (said_subject in ('CARD', 'COPY')),
    said_item_id  uuid        references inventory_item (id),
    constraint verification_document_sha256_key unique (production_id, sha256)
);
create index verification_document_uploaded_ix on verification_document (production_id, uploaded_at desc);

create table verification_document_chunk (
    document_id uuid  not null references verification_document (id) deferrable initially deferred,
    position    int   not null,
    size_bytes  int   not null,
    content     bytea not null,
    constraint verification_document_chunk_pk primary key (document_id, position)
);
alter table verification_document_chunk alter column content set storage external;

-- How far the reading of a document has come; not evidence, so it changes until it has ended.
create table verification_reading (
    document_id   uuid        not null primary key references verification_document (id),
    production_id uuid        not null references production_production (id),
    state         text        not null check (state in ('WAITING', 'READING', 'READ', 'REJECTED')),
    bytes_read    bigint      not null default 0,
    entries       bigint      not null default 0,
    ended_at      timestamptz,
    format        text,
    algorithms    text,
    basis         text,
    hash_lists    int,
    created_on    timestamptz,
    host          text,
    process       text,
    comment       text,
    problem       text,
    problem_args  text[],
    problem_line  bigint,
    problem_column int
);
create index verification_reading_open_ix on verification_reading (production_id) where state in ('WAITING', 'READING');

-- The entries of a document under one folder: what belongs to one roll.
create table verification_part (
    id            uuid   not null primary key,
    production_id uuid   not null references production_production (id),
    document_id   uuid   not null references verification_document (id),
    folder        text   not null,
    entries       bigint not null,
    size_bytes    bigint not null,
    guess_roll_id uuid   references offload_roll (id),
    guess_subject text   check (guess_subject in ('CARD', 'COPY')),
    guess_item_id uuid   references inventory_item (id),
    position      int    not null,
    constraint verification_part_key unique (document_id, folder)
);

-- What a part describes: the card itself, a copy on a medium, or nothing that belongs to a roll. A correction is a new
-- row that names the one it replaces. A part that was sent for two copies has two rows, neither of which is replaced.
create table verification_assignment (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    part_id       uuid        not null references verification_part (id),
    subject       text        not null check (subject in ('CARD', 'COPY', 'NOT_A_ROLL')),
    roll_id       uuid        references offload_roll (id),
    copy_id       uuid        references offload_copy (id),
    assigned_at   timestamptz not null,
    assigned_by   uuid        not null references people_person (id),
    replaces      bigint      unique references verification_assignment (id),
    note          text        not null default '',
    constraint verification_assignment_subject check (
        (subject = 'NOT_A_ROLL' and roll_id is null and copy_id is null)
        or (subject = 'CARD' and roll_id is not null and copy_id is null)
        or (subject = 'COPY' and roll_id is not null and copy_id is not null))
);
create index verification_assignment_part_ix on verification_assignment (part_id);
create index verification_assignment_roll_ix on verification_assignment (roll_id);

create table verification_verdict (
    id                bigint      generated always as identity primary key,
    production_id     uuid        not null references production_production (id),
    copy_id           uuid        not null references offload_copy (id),
    roll_id           uuid        not null references offload_roll (id),
    verdict           text        not null check (verdict in ('PROVEN', 'CONSISTENT', 'SIZE_ONLY', 'INCOMPLETE', 'FAILED', 'UNKNOWN')),
    reasons           text[]      not null,
    reference_part_id uuid        references verification_part (id),
    evidence_part_id  uuid        references verification_part (id),
    same              bigint      not null,
    different         bigint      not null,
    missing           bigint      not null,
    extra             bigint      not null,
    moved             bigint      not null,
    size_only         bigint      not null,
    name_only         bigint      not null,
    listed_twice      bigint      not null,
    judged_at         timestamptz not null
);
create index verification_verdict_copy_ix on verification_verdict (copy_id, id desc);
create index verification_verdict_roll_ix on verification_verdict (roll_id);

create table verification_difference (
    verdict_id bigint not null references verification_verdict (id),
    position   int    not null,
    kind       text   not null,
    path       text   not null,
    expected   text   not null default '',
    found      text   not null default '',
    other_path text,
    constraint verification_difference_pk primary key (verdict_id, position)
);

-- A clearance allows a card's erasure. It stands until a withdrawal names it, and is used up by an erasure.
create table verification_clearance (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    roll_id       uuid        not null references offload_roll (id),
    card_id       uuid        not null references inventory_item (id),
    cleared_at    timestamptz not null,
    cleared_by    uuid        not null references people_person (id),
    policy        text        not null,
    verdict_ids   bigint[]    not null
);
create index verification_clearance_roll_ix on verification_clearance (roll_id);

create table verification_clearance_withdrawal (
    clearance_id uuid        not null primary key references verification_clearance (id),
    withdrawn_at timestamptz not null,
    reason       text        not null,
    verdict_id   bigint      references verification_verdict (id)
);

create table verification_erasure (
    clearance_id uuid        not null primary key references verification_clearance (id),
    erased_at    timestamptz not null,
    erased_by    uuid        not null references people_person (id)
);

-- A verdict that fell after something had been cleared on the strength of it.
create table verification_alarm (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    roll_id       uuid        not null references offload_roll (id),
    copy_id       uuid        not null references offload_copy (id),
    verdict_id    bigint      not null references verification_verdict (id),
    card_erased   boolean     not null,
    raised_at     timestamptz not null
);
create index verification_alarm_production_ix on verification_alarm (production_id, id desc);

do
$$
declare evidence text;
begin
    foreach evidence in array array['verification_document', 'verification_document_chunk', 'verification_part',
        'verification_assignment', 'verification_verdict', 'verification_difference', 'verification_clearance',
        'verification_clearance_withdrawal', 'verification_erasure', 'verification_alarm']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function forbid_change()',
            evidence || '_immutable', evidence);
    end loop;
end
$$;
