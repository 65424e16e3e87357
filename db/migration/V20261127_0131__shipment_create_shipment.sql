-- Media on their way from one place to another, or from one hand to another at the same place. What is stored of the state
-- is what somebody decided; how far it has arrived follows from its items.
create table shipment_shipment (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    number        int         not null check (number > 0),
    from_place_id uuid        not null references production_place (id),
    to_place_id   uuid        not null references production_place (id),
    receiver      text        not null default '',
    -- Empty: handed over without one.
    carrier       text        not null default '',
    -- One seal a line.
    seals         text        not null default '',
    weight_grams  bigint      check (weight_grams > 0),
    note          text        not null default '',
    state         text        not null check (state in ('PACKING', 'SENT', 'DISCARDED')),
    packed_at     timestamptz not null,
    packed_by     uuid        not null references people_person (id),
    sent_at       timestamptz,
    sent_by       uuid        references people_person (id),
    expected_by   timestamptz,
    -- Counts sendings: one that was taken back may be sent again with other contents.
    dispatch      int         not null default 0,
    version       int         not null default 0,
    constraint shipment_shipment_number_key unique (production_id, number),
    constraint shipment_shipment_sent_check check ((state = 'SENT') = (sent_at is not null) and (sent_at is null) = (sent_by is null))
);

create table shipment_item (
    shipment_id   uuid not null references shipment_shipment (id),
    item_id       uuid not null references inventory_item (id),
    position      int  not null,
    state         text not null check (state in ('PACKED', 'UNDER_WAY', 'MISSING', 'ARRIVED', 'LOST')),
    -- Who had it before it was sent, for taking that back.
    holder_before text not null default '',
    constraint shipment_item_pk primary key (shipment_id, item_id)
);
-- Nothing is in two boxes.
create unique index shipment_item_one_box_key on shipment_item (item_id) where state in ('PACKED', 'UNDER_WAY', 'MISSING');

-- What was in it when it was sent: a row for each roll on each item, and one without a roll for an item without any.
create table shipment_content (
    shipment_id uuid   not null references shipment_shipment (id),
    dispatch    int    not null check (dispatch > 0),
    position    int    not null check (position > 0),
    item_id     uuid   not null references inventory_item (id),
    item_code   text   not null,
    item_kind   text   not null,
    roll_id     uuid   references offload_roll (id),
    roll_code   text,
    -- Null for the card itself.
    rendition   text   check (rendition in ('AS_RECORDED', 'ENCODED')),
    size_bytes  bigint,
    verdict     text   check (verdict in ('PROVEN', 'CONSISTENT', 'SIZE_ONLY', 'INCOMPLETE', 'FAILED', 'UNKNOWN')),
    -- SHA-256 of the documents that speak for it.
    manifests   text[] not null,
    constraint shipment_content_pk primary key (shipment_id, dispatch, position),
    constraint shipment_content_roll_check check ((roll_id is null) = (roll_code is null))
);
create trigger shipment_content_immutable before update or delete on shipment_content
    for each row execute function forbid_change();

-- An address at which one receiver confirms the arrival without an account. Only the SHA-256 of its secret is kept.
create table shipment_link (
    id            uuid        not null primary key,
    shipment_id   uuid        not null references shipment_shipment (id),
    secret_sha256 bytea       not null check (octet_length(secret_sha256) = 32),
    made_at       timestamptz not null,
    made_by       uuid        not null references people_person (id),
    expires_at    timestamptz not null,
    revoked_at    timestamptz,
    used_at       timestamptz,
    used_by_name  text,
    constraint shipment_link_secret_key unique (secret_sha256),
    constraint shipment_link_used_check check ((used_at is null) = (used_by_name is null))
);
-- A shipment has one address at a time.
create unique index shipment_link_open_key on shipment_link (shipment_id) where revoked_at is null and used_at is null;

-- What happened to a shipment, or to an item of it: sent, taken back, arrived, missing …
create table shipment_act (
    id          bigint      generated always as identity primary key,
    shipment_id uuid        not null references shipment_shipment (id),
    at          timestamptz not null,
    act         text        not null check (act in ('SENT', 'TAKEN_BACK', 'EXPECTED_ANEW', 'ARRIVED', 'SEAL_DAMAGED', 'MISSING', 'LOST')),
    item_id     uuid        references inventory_item (id),
    expected_by timestamptz,
    note        text        not null default '',
    person_id   uuid        references people_person (id),
    by_name     text        not null,
    link_id     uuid        references shipment_link (id),
    constraint shipment_act_item_check check ((item_id is null) = (act in ('SENT', 'TAKEN_BACK', 'EXPECTED_ANEW'))),
    constraint shipment_act_expected_check check ((expected_by is not null) = (act = 'EXPECTED_ANEW'))
);
create index shipment_act_shipment_ix on shipment_act (shipment_id, id);
create trigger shipment_act_immutable before update or delete on shipment_act
    for each row execute function forbid_change();
