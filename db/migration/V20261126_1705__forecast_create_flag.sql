-- A flag says that a pool needs an order. What became of it is its acts, numbered from one; the newest says how it stands,
-- and two people can't both take the same number. Acts without a person are the forecast's.
create table forecast_flag (
    id            uuid   not null primary key,
    sequence      bigint not null generated always as identity,
    production_id uuid   not null references production_production (id),
    leg_id        uuid   not null references production_leg (id) on delete cascade,
    opened_on     date   not null,
    -- The date since which forecasts see no need for it; it isn't closed at once.
    calm_since    date
);
create index forecast_flag_production_ix on forecast_flag (production_id, leg_id, sequence desc);
create index forecast_flag_leg_ix on forecast_flag (leg_id);

create table forecast_flag_act (
    flag_id  uuid        not null references forecast_flag (id) on delete cascade,
    number   int         not null check (number > 0),
    at       timestamptz not null,
    act      text        not null check (act in ('OPENED', 'ACKNOWLEDGED', 'SNOOZED', 'REOPENED', 'WOKEN',
                                                 'CLOSED_BY_FORECAST', 'CLOSED_BY_ORDER')),
    by_id    uuid        references people_person (id),
    by_name  text        not null default '',
    run_id   bigint      references forecast_run (id),
    order_id uuid        references forecast_order (id),
    reason   text        not null default '',
    until    date,
    constraint forecast_flag_act_pk primary key (flag_id, number),
    constraint forecast_flag_act_snooze_check check ((act = 'SNOOZED') = (until is not null)),
    constraint forecast_flag_act_reason_check check (act <> 'SNOOZED' or reason <> '')
);
create trigger forecast_flag_act_immutable before update on forecast_flag_act
    for each row execute function forbid_change();
