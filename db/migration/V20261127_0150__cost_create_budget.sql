-- What the production may spend on media. A changed budget is a new row; the one with the highest number counts. Numbered
-- from one, so that two people can't both change the same.
create table cost_budget (
    production_id uuid        not null references production_production (id),
    number        int         not null check (number > 0),
    minor_units   bigint      not null check (minor_units >= 0),
    reason        text        not null check (reason <> ''),
    at            timestamptz not null,
    by_id         uuid        not null references people_person (id),
    constraint cost_budget_pk primary key (production_id, number)
);
create trigger cost_budget_immutable before update or delete on cost_budget
    for each row execute function forbid_change();
