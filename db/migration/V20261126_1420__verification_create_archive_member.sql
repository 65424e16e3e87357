-- Documents that came in one archive are of one moment; this tells their order, such as that of the generations.
alter table verification_document add column sequence int not null default 0;

-- A manifest that an archive holds, or should. Each is a document of its own; one that was here before is only named.
create table verification_archive_member (
    id            bigint  generated always as identity primary key,
    production_id uuid    not null references production_production (id),
    archive_id    uuid    not null references verification_document (id),
    position      int     not null,
    member_id     uuid    references verification_document (id),
    path          text    not null,
    generation    int,
    state         text    not null check (state in ('GOOD', 'NOT_LISTED', 'DIFFERS', 'UNREADABLE', 'MISSING')),
    was_here      boolean not null,
    -- the first manifest of the same bag: all of them are one statement
    speaks_with   uuid    references verification_document (id),
    constraint verification_archive_member_key unique (archive_id, position),
    constraint verification_archive_member_missing check ((member_id is null) = (state = 'MISSING'))
);
create index verification_archive_member_document_ix on verification_archive_member (member_id, id);

-- What a person should know of an archive: the words are a message's.
create table verification_archive_finding (
    archive_id    uuid   not null references verification_document (id),
    position      int    not null,
    production_id uuid   not null references production_production (id),
    weight        text   not null check (weight in ('WRONG', 'INCOMPLETE', 'REMARK')),
    message_key   text   not null,
    count         bigint,
    names         text[] not null,
    constraint verification_archive_finding_pk primary key (archive_id, position)
);

create trigger verification_archive_member_immutable before update or delete on verification_archive_member
    for each row execute function forbid_change();
create trigger verification_archive_finding_immutable before update or delete on verification_archive_finding
    for each row execute function forbid_change();
