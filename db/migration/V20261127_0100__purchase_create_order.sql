-- What is ordered from a supplier. Version counts every act, of steps and of receipts: of two people at once one is refused.
create table purchase_order (
    id                   uuid   not null primary key,
    production_id        uuid   not null references production_production (id),
    number               int    not null check (number > 0),
    -- Unknown while a line isn't in a catalogue yet, and of orders from before suppliers were kept.
    supplier_id          uuid   references supplier_supplier (id),
    delivered_to         text   not null check (delivered_to in ('SET', 'OFFICE')),
    delivery_minor_units bigint not null check (delivery_minor_units >= 0),
    needed_by            date,
    note                 text   not null,
    source               text   not null check (source in ('FLAG', 'SCENARIO', 'HAND')),
    -- The leg or the scenario it came from, as it was called then.
    source_name          text   not null,
    version              int    not null default 0,
    constraint purchase_order_number_uq unique (production_id, number)
);
create index purchase_order_supplier_ix on purchase_order (supplier_id);

-- Lines as they were ordered: what the catalogue says later changes nothing. They are changed while the order is proposed;
-- one that is taken out stays, since a receipt that was taken back may name it.
create table purchase_line (
    id                     uuid    not null primary key,
    order_id               uuid    not null references purchase_order (id),
    position               int     not null check (position > 0),
    catalogue_item_id      uuid    references supplier_item (id),
    kind                   text    not null check (kind in ('CARD', 'READER', 'ADAPTER', 'DRIVE', 'ARRAY', 'TAPE')),
    model                  text    not null check (model <> ''),
    capacity_bytes         bigint  check (capacity_bytes > 0),
    read_bytes_per_second  bigint  check (read_bytes_per_second > 0),
    write_bytes_per_second bigint  check (write_bytes_per_second > 0),
    items                  int     not null check (items > 0),
    -- Hired for so many weeks; bought if null.
    hire_weeks             int     check (hire_weeks > 0),
    -- Of an item, if it is hired for a week; null while nobody knows.
    unit_minor_units       bigint  check (unit_minor_units >= 0),
    leg_id                 uuid    references production_leg (id) on delete set null,
    removed                boolean not null default false
);
create index purchase_line_order_ix on purchase_line (order_id);
create index purchase_line_leg_ix on purchase_line (leg_id);
create index purchase_line_item_ix on purchase_line (catalogue_item_id);

-- What became of an order, numbered from one. A step that was taken back stays; a step is taken back once.
create table purchase_step (
    order_id        uuid        not null references purchase_order (id),
    number          int         not null check (number > 0),
    at              timestamptz not null,
    by_id           uuid        not null references people_person (id),
    step            text        not null check (step in ('PROPOSED', 'CHANGED', 'APPROVED', 'DECLINED', 'PLACED', 'PROMISED',
                                                         'CANCELLED', 'CLOSED', 'TAKEN_BACK')),
    -- The date on which it was placed.
    on_date         date,
    -- When the supplier says that it comes.
    expected_on     date,
    reason          text        not null default '',
    taken_back_step int,
    constraint purchase_step_pk primary key (order_id, number),
    constraint purchase_step_placed_check check ((step = 'PLACED') = (on_date is not null)),
    constraint purchase_step_expected_check check ((step in ('PLACED', 'PROMISED')) = (expected_on is not null)),
    constraint purchase_step_dates_check check (expected_on >= on_date),
    constraint purchase_step_reason_check check (step not in ('DECLINED', 'CANCELLED') or reason <> ''),
    constraint purchase_step_taken_back_check check ((step = 'TAKEN_BACK') = (taken_back_step is not null)),
    constraint purchase_step_taken_back_uq unique (order_id, taken_back_step),
    constraint purchase_step_taken_back_fk foreign key (order_id, taken_back_step)
        references purchase_step (order_id, number)
);
create trigger purchase_step_immutable before update or delete on purchase_step
    for each row execute function forbid_change();

-- Up to which amount people of a role approve orders, zero for none and null for any. Without a row: the office any, others none.
create table purchase_limit (
    production_id        uuid not null primary key references production_production (id),
    office_minor_units   bigint check (office_minor_units >= 0),
    wrangler_minor_units bigint check (wrangler_minor_units >= 0),
    post_minor_units     bigint check (post_minor_units >= 0),
    version              int  not null default 0
);
