-- Media on order for a leg's pool. What came and what was called off are rows of their own, numbered from one, so that two
-- people can't both take the same step.
create table forecast_order (
    id                  uuid        not null primary key,
    production_id       uuid        not null references production_production (id),
    leg_id              uuid        not null references production_leg (id) on delete cascade,
    entered_at          timestamptz not null,
    entered_by          uuid        not null references people_person (id),
    ordered_on          date        not null,
    expected_on         date        not null,
    items               int         not null check (items > 0),
    item_capacity_bytes bigint      not null check (item_capacity_bytes > 0),
    note                text        not null default '',
    constraint forecast_order_dates_check check (expected_on >= ordered_on)
);
create index forecast_order_production_ix on forecast_order (production_id);
create index forecast_order_leg_ix on forecast_order (leg_id);

create table forecast_order_step (
    order_id uuid        not null references forecast_order (id) on delete cascade,
    number   int         not null check (number > 0),
    at       timestamptz not null,
    by_id    uuid        not null references people_person (id),
    step     text        not null check (step in ('CAME', 'CANCELLED')),
    items    int         not null check (items > 0),
    constraint forecast_order_step_pk primary key (order_id, number)
);

create trigger forecast_order_immutable before update on forecast_order
    for each row execute function forbid_change();
create trigger forecast_order_step_immutable before update on forecast_order_step
    for each row execute function forbid_change();
