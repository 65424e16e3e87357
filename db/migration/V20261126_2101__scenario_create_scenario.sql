-- A shooting day played through under assumptions that people want to come back to. Its inputs hold all that its answers
-- follow from, so the same row says the same for ever.
create table scenario_scenario (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    name          text        not null check (name <> ''),
    inputs        jsonb       not null,
    saved_at      timestamptz not null,
    saved_by      uuid        not null references people_person (id),
    archived_at   timestamptz,
    version       int         not null default 0
);
create unique index scenario_scenario_name_key on scenario_scenario (production_id, lower(name)) where archived_at is null;
create index scenario_scenario_saved_ix on scenario_scenario (production_id, saved_at desc);
