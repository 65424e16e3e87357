-- Whoever sells or hires out media. Without a country its holidays are the production's own, without working days those too.
create table supplier_supplier (
    id                          uuid   not null primary key,
    production_id               uuid   not null references production_production (id),
    name                        text   not null check (name <> ''),
    country                     text   check (country ~ '^[A-Z]{2}$'),
    working_days                text   not null default '',
    -- In the production's time zone: what is ordered later counts as ordered on the next working day.
    order_cut_off               time   not null,
    delivery_minor_units        bigint not null check (delivery_minor_units >= 0),
    lead_time_working_days      int    not null check (lead_time_working_days >= 0),
    slow_lead_time_working_days int    not null,
    note                        text   not null default '',
    version                     int    not null default 0,
    constraint supplier_supplier_slow_check check (slow_lead_time_working_days >= lead_time_working_days)
);
create unique index supplier_supplier_name_uq on supplier_supplier (production_id, lower(name));

create table supplier_contact (
    id          uuid not null primary key,
    supplier_id uuid not null references supplier_supplier (id) on delete cascade,
    role        text not null check (role <> ''),
    name        text not null,
    phone       text not null,
    email       text not null,
    version     int  not null default 0
);
create index supplier_contact_supplier_ix on supplier_contact (supplier_id);

-- What a supplier offers. One that isn't to be had any more is archived, never deleted: orders and forecasts name it.
create table supplier_item (
    id                     uuid    not null primary key,
    supplier_id            uuid    not null references supplier_supplier (id),
    kind                   text    not null check (kind in ('CARD', 'READER', 'ADAPTER', 'DRIVE', 'ARRAY', 'TAPE')),
    model                  text    not null check (model <> ''),
    capacity_bytes         bigint  check (capacity_bytes > 0),
    read_bytes_per_second  bigint  check (read_bytes_per_second > 0),
    write_bytes_per_second bigint  check (write_bytes_per_second > 0),
    pack_size              int     not null check (pack_size > 0),
    archived               boolean not null default false,
    version                int     not null default 0
);
create index supplier_item_supplier_ix on supplier_item (supplier_id);

-- A new price is a new row; of two that are valid from the same date the one with the higher number counts. Numbered from
-- one, so that two people can't both enter the same. Entered by nobody: taken over from before there were dates.
create table supplier_price (
    item_id               uuid        not null references supplier_item (id),
    number                int         not null check (number > 0),
    entered_at            timestamptz not null,
    entered_by            uuid        references people_person (id),
    valid_from            date        not null,
    item_minor_units      bigint      check (item_minor_units >= 0),
    hire_week_minor_units bigint      check (hire_week_minor_units >= 0),
    hire_minimum_weeks    int         check (hire_minimum_weeks > 0),
    constraint supplier_price_pk primary key (item_id, number),
    constraint supplier_price_hire_check check ((hire_week_minor_units is null) = (hire_minimum_weeks is null)),
    constraint supplier_price_some_check check (item_minor_units is not null or hire_week_minor_units is not null)
);
create trigger supplier_price_immutable before update or delete on supplier_price
    for each row execute function forbid_change();
