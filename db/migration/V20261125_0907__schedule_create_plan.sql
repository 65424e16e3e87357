-- Planned recorded minutes of a camera in a format on a shooting day.
create table schedule_plan (
    day_id    uuid          not null references schedule_day (id) on delete cascade,
    camera_id uuid          not null references production_camera (id),
    format_id uuid          not null references format_recording_format (id),
    minutes   numeric(8, 2) not null check (minutes >= 0),
    constraint schedule_plan_pk primary key (day_id, camera_id, format_id)
);
