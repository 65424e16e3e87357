-- What was agreed with a supplier about hired items. Numbered within the production: its code is made of the number.
create table hire_agreement (
    id            uuid not null primary key,
    production_id uuid not null references production_production (id),
    number        int  not null check (number > 0),
    constraint hire_agreement_number_uq unique (production_id, number)
);

-- What was entered about an agreement, one after the other: agreed, extended, corrected (replaces the entry in force that was
-- made last) and taken back (removes it). All entries stay; the newest number says what the person who wrote it had seen.
create table hire_terms (
    agreement_id         uuid        not null references hire_agreement (id),
    number               int         not null check (number > 0),
    act                  text        not null check (act in ('AGREED', 'EXTENDED', 'CORRECTED', 'TAKEN_BACK')),
    entered_at           timestamptz not null,
    entered_by           uuid        not null references people_person (id),
    supplier_id          uuid        not null references supplier_supplier (id),
    reference            text        not null default '',
    started_on           date        not null,
    due_on               date        not null,
    minimum_weeks        int         not null check (minimum_weeks > 0),
    -- Null: a late return costs the weekly rate for each week begun.
    late_day_minor_units bigint      check (late_day_minor_units >= 0),
    note                 text        not null default '',
    constraint hire_terms_pk primary key (agreement_id, number),
    constraint hire_terms_due_check check (due_on >= started_on)
);
create trigger hire_terms_immutable before update or delete on hire_terms
    for each row execute function forbid_change();

create table hire_rate (
    agreement_id     uuid   not null,
    number           int    not null,
    item_id          uuid   not null references inventory_item (id),
    week_minor_units bigint not null check (week_minor_units >= 0),
    constraint hire_rate_pk primary key (agreement_id, number, item_id),
    constraint hire_rate_terms_fk foreign key (agreement_id, number) references hire_terms (agreement_id, number)
);
create trigger hire_rate_immutable before update or delete on hire_rate
    for each row execute function forbid_change();

-- Under which agreement an item is hired now: one at most.
create table hire_item (
    item_id      uuid not null primary key references inventory_item (id),
    agreement_id uuid not null references hire_agreement (id)
);
create index hire_item_agreement_ix on hire_item (agreement_id);

-- How the hire of an item ended, and what it came to by the terms of that time. Of several the highest number counts: it
-- corrects the others. Without an agreement it began, as far as anybody knows, when the item was registered.
create table hire_end (
    item_id          uuid        not null references inventory_item (id),
    number           int         not null check (number > 0),
    production_id    uuid        not null references production_production (id),
    agreement_id     uuid        references hire_agreement (id),
    entered_at       timestamptz not null,
    entered_by       uuid        not null references people_person (id),
    started_on       date        not null,
    due_on           date,
    ended_on         date        not null,
    weeks            bigint      not null,
    hire_minor_units bigint      not null,
    late_minor_units bigint      not null,
    note             text        not null default '',
    constraint hire_end_pk primary key (item_id, number)
);
create index hire_end_production_ix on hire_end (production_id);
create trigger hire_end_immutable before update or delete on hire_end
    for each row execute function forbid_change();

create table hire_settings (
    production_id uuid not null primary key references production_production (id),
    remind_days   int  not null check (remind_days between 0 and 60),
    version       int  not null
);
