-- A numbered shooting day of a unit. Not a calendar date: a night shoot runs past midnight.
create table schedule_day (
    id            uuid not null primary key,
    production_id uuid not null references production_production (id),
    unit_id       uuid not null references production_unit (id),
    number        int  not null check (number > 0),
    date          date not null,
    state         text not null check (state in ('PLANNED', 'SHOOTING', 'WRAPPED', 'CANCELLED')),
    note          text not null default '',
    version       int  not null default 0,
    constraint schedule_day_number_key unique (unit_id, number) deferrable initially deferred,
    constraint schedule_day_date_key unique (unit_id, date) deferrable initially deferred
);
create index schedule_day_production_ix on schedule_day (production_id, date);
