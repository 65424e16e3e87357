-- A file as somebody sent it and what became of it: what the sender was told, kept for good. Files sent together share
-- their delivery. A document that was here already is sent again, not stored again; an empty file is not stored at all.
create table verification_delivery (
    id            bigint      generated always as identity primary key,
    delivery_id   uuid        not null,
    production_id uuid        not null references production_production (id),
    sent_at       timestamptz not null,
    sent_by       uuid        not null references people_person (id),
    sent_name     text        not null,
    said_subject  text        check (said_subject in ('CARD', 'COPY')),
    said_item_id  uuid        references inventory_item (id),
    outcome       text        not null check (outcome in ('STORED', 'HERE', 'EMPTY')),
    document_id   uuid        references verification_document (id),
    constraint verification_delivery_document check ((document_id is null) = (outcome = 'EMPTY'))
);
create index verification_delivery_together_ix on verification_delivery (production_id, delivery_id, id);
create index verification_delivery_document_ix on verification_delivery (document_id, id);

create trigger verification_delivery_immutable before update or delete on verification_delivery
    for each row execute function forbid_change();
