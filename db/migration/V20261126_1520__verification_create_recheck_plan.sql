-- How often copies are to be read again, by the kind of medium; null: not planned. A setting, so it changes.
create table verification_recheck_plan (
    production_id uuid not null primary key references production_production (id),
    drive_days    int  check (drive_days between 1 and 3650),
    array_days    int  check (array_days between 1 and 3650),
    tape_days     int  check (tape_days between 1 and 3650),
    version       int  not null default 0
);
