create table offload_roll (
    id            uuid          not null primary key,
    production_id uuid          not null references production_production (id),
    code          text          not null,
    camera_id     uuid          not null references production_camera (id),
    day_id        uuid          not null references schedule_day (id),
    card_id       uuid          not null references inventory_item (id),
    format_id     uuid          not null references format_recording_format (id),
    loaded_at     timestamptz   not null,
    loaded_by     uuid          not null references people_person (id),
    pulled_at     timestamptz,
    pulled_by     uuid          references people_person (id),
    minutes       numeric(8, 2) check (minutes >= 0),
    size_bytes    bigint        check (size_bytes >= 0),
    note          text          not null default '',
    version       int           not null default 0,
    constraint offload_roll_pulled check ((pulled_at is null) = (minutes is null))
);
create unique index offload_roll_code_key on offload_roll (production_id, upper(code));
create index offload_roll_day_ix on offload_roll (day_id);
create index offload_roll_card_ix on offload_roll (card_id);

-- One reading of a card through a reader, and perhaps an adapter, writing one or more copies.
create table offload_session (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    roll_id       uuid        not null references offload_roll (id),
    reader_id     uuid        not null references inventory_item (id),
    adapter_id    uuid        references inventory_item (id),
    started_at    timestamptz not null,
    started_by    uuid        not null references people_person (id),
    ended_at      timestamptz,
    ended_by      uuid        references people_person (id),
    outcome       text        not null default 'RUNNING' check (outcome in ('RUNNING', 'FINISHED', 'ABANDONED')),
    size_bytes    bigint      check (size_bytes > 0),
    note          text        not null default '',
    constraint offload_session_ended check ((outcome = 'RUNNING') = (ended_at is null)),
    constraint offload_session_size check ((outcome = 'FINISHED') = (size_bytes is not null))
);
create unique index offload_session_running_key on offload_session (roll_id) where outcome = 'RUNNING';
create index offload_session_roll_ix on offload_session (roll_id);

-- One rendition of one roll on one media item.
create table offload_copy (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    roll_id       uuid        not null references offload_roll (id),
    item_id       uuid        not null references inventory_item (id),
    leg_id        uuid        references production_leg (id),
    rendition     text        not null check (rendition in ('AS_RECORDED', 'ENCODED')),
    written_from  timestamptz not null,
    created_at    timestamptz not null,
    constraint offload_copy_key unique (roll_id, item_id, rendition)
);
create index offload_copy_item_ix on offload_copy (item_id);

-- A copy is written by the session that made it and by each that made it again.
create table offload_destination (
    session_id uuid not null references offload_session (id),
    copy_id    uuid not null references offload_copy (id),
    constraint offload_destination_pk primary key (session_id, copy_id)
);
create index offload_destination_copy_ix on offload_destination (copy_id);
