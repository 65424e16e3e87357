-- How more media for a leg's pool can be had.
create table forecast_supply (
    leg_id                    uuid   not null primary key references production_leg (id) on delete cascade,
    production_id             uuid   not null references production_production (id),
    item_capacity_bytes       bigint not null check (item_capacity_bytes > 0),
    pack_size                 int    not null check (pack_size > 0),
    lead_time_working_days    int    not null check (lead_time_working_days >= 0),
    safety_working_days       int    not null check (safety_working_days >= 0),
    item_price_minor_units    bigint not null check (item_price_minor_units >= 0),
    version                   int    not null default 0
);
create index forecast_supply_production_ix on forecast_supply (production_id);

-- How much of each item may be filled; a production without a row uses the usual level.
create table forecast_fill_level (
    production_id uuid not null primary key references production_production (id),
    percent       int  not null check (percent between 1 and 100),
    version       int  not null default 0
);

-- Which forecasts were asked for and which are answered, both counted from the beginning: what is asked for while a run
-- executes is seen at its end. Its row is the lock that keeps the asking and the ending apart.
create table forecast_state (
    production_id uuid        not null primary key references production_production (id),
    asked         bigint      not null,
    answered      bigint      not null default 0,
    because       text[]      not null,
    computed_at   timestamptz
);

-- Every forecast with what it was made from. One that says the same as the newest isn't kept again.
create table forecast_run (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    computed_at   timestamptz not null,
    today         date        not null,
    because       text[]      not null,
    method_id     text        not null,
    inputs        jsonb       not null,
    results       jsonb       not null
);
create index forecast_run_production_ix on forecast_run (production_id, id desc);
create index forecast_run_today_ix on forecast_run (production_id, today, id desc);
create trigger forecast_run_immutable before update or delete on forecast_run
    for each row execute function forbid_change();
