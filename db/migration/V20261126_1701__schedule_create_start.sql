-- The plan as it was when a day began to be shot: what is learned from the day mustn't know later changes of its plan. A
-- day that is stopped and started again has several; the newest counts. Days that began before this was kept have none.
create table schedule_start (
    id              bigint         generated always as identity primary key,
    production_id   uuid           not null references production_production (id),
    day_id          uuid           not null references schedule_day (id) on delete cascade,
    started_at      timestamptz    not null,
    planned_minutes numeric(10, 2) not null check (planned_minutes >= 0),
    planned_bytes   bigint         not null check (planned_bytes >= 0)
);
create index schedule_start_production_ix on schedule_start (production_id, day_id, id desc);
create index schedule_start_day_ix on schedule_start (day_id);
-- A day that was stopped again may be removed, and its start goes with it.
create trigger schedule_start_immutable before update on schedule_start
    for each row execute function forbid_change();
