-- What reading a document brought to light beside its files: what it says of its making, and what departs from its
-- standard. A note names its text and what the text is about.
create table verification_note (
    id            bigint not null generated always as identity primary key,
    production_id uuid   not null references production_production (id),
    document_id   uuid   not null references verification_document (id),
    kind          text   not null check (kind in ('FACT', 'REMARK')),
    message       text   not null,
    arguments     text[] not null
);
create index verification_note_document_ix on verification_note (document_id, id);

create trigger verification_note_immutable before update or delete on verification_note
    for each row execute function forbid_change();
