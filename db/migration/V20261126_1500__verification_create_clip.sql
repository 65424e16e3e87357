-- What a part of a document lists of a clip, written when the document is read. Names compare byte by byte, so that a
-- beginning of a name is a range of the index.
create table verification_clip (
    part_id        uuid   not null references verification_part (id),
    production_id  uuid   not null references production_production (id),
    clip           text   not null collate "C",
    folder         text   not null,
    files          bigint not null check (files > 0),
    size_bytes     bigint check (size_bytes >= 0),
    first_frame    int,
    last_frame     int,
    missing_frames bigint not null check (missing_frames >= 0),
    gaps           text   not null,
    constraint verification_clip_pk primary key (part_id, clip),
    constraint verification_clip_frames check ((first_frame is null) = (last_frame is null) and first_frame <= last_frame)
);
create index verification_clip_name_ix on verification_clip (production_id, clip);

-- What a person should look at in a part, found when the document was read.
create table verification_part_warning (
    part_id       uuid   not null references verification_part (id),
    production_id uuid   not null references production_production (id),
    kind          text   not null,
    count         bigint not null check (count > 0),
    examples      text[] not null,
    constraint verification_part_warning_pk primary key (part_id, kind)
);

create trigger verification_clip_immutable before update or delete on verification_clip
    for each row execute function forbid_change();
create trigger verification_part_warning_immutable before update or delete on verification_part_warning
    for each row execute function forbid_change();
