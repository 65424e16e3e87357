-- What a scenario uses and the production doesn't own, proposed for ordering. The lines are kept as they were proposed.
create table scenario_proposal (
    id               uuid        not null primary key,
    production_id    uuid        not null references production_production (id),
    scenario_id      uuid        not null references scenario_scenario (id),
    scenario_name    text        not null,
    lines            jsonb       not null,
    cost_minor_units bigint      check (cost_minor_units >= 0),
    needed_by        date        not null,
    state            text        not null default 'PROPOSED' check (state in ('PROPOSED', 'TAKEN_UP', 'WITHDRAWN')),
    reason           text        not null default '',
    proposed_at      timestamptz not null,
    proposed_by      uuid        not null references people_person (id),
    proposed_by_name text        not null,
    version          int         not null default 0,
    constraint scenario_proposal_reason_check check (state <> 'WITHDRAWN' or reason <> '')
);
create index scenario_proposal_production_ix on scenario_proposal (production_id, proposed_at desc);
create unique index scenario_proposal_open_key on scenario_proposal (scenario_id) where state = 'PROPOSED';
