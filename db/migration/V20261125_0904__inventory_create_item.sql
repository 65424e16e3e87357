create table inventory_item (
    id                     uuid        not null primary key,
    production_id          uuid        not null references production_production (id),
    code                   text        not null,
    kind                   text        not null check (kind in ('CARD', 'READER', 'ADAPTER', 'DRIVE', 'ARRAY', 'TAPE')),
    model                  text        not null,
    capacity_bytes         bigint      check (capacity_bytes > 0),
    read_bytes_per_second  bigint      check (read_bytes_per_second > 0),
    write_bytes_per_second bigint      check (write_bytes_per_second > 0),
    ownership              text        not null check (ownership in ('BOUGHT', 'HIRED')),
    supplier               text        not null default '',
    cost_minor_units       bigint      check (cost_minor_units >= 0),
    hired_until            date,
    leg_id                 uuid        references production_leg (id),
    place_id               uuid        not null references production_place (id),
    holder                 text        not null default '',
    condition              text        not null check (condition in ('GOOD', 'QUARANTINED', 'RETIRED', 'RETURNED', 'LOST')),
    card_state             text        check (card_state in ('BLANK', 'IN_CAMERA', 'EXPOSED', 'COPYING', 'HELD', 'CLEAR_TO_ERASE')),
    created_at             timestamptz not null,
    version                int         not null default 0,
    constraint inventory_item_card_state check ((kind = 'CARD') = (card_state is not null)),
    constraint inventory_item_capacity check (kind in ('READER', 'ADAPTER') or capacity_bytes is not null)
);
create unique index inventory_item_code_key on inventory_item (production_id, upper(code));
create index inventory_item_leg_ix on inventory_item (leg_id);

-- The chain of custody: who had the item, where, in what condition, and why that changed.
create table inventory_custody (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    item_id       uuid        not null references inventory_item (id),
    at            timestamptz not null,
    act           text        not null check (act in ('REGISTERED', 'MOVED', 'QUARANTINED', 'RELEASED', 'RETIRED', 'RETURNED', 'LOST', 'FOUND')),
    place_id      uuid        not null references production_place (id),
    holder        text        not null default '',
    condition     text        not null,
    note          text        not null default '',
    person_id     uuid        not null references people_person (id)
);
create index inventory_custody_item_ix on inventory_custody (item_id, id);
create trigger inventory_custody_immutable before update or delete on inventory_custody
    for each row execute function forbid_change();
