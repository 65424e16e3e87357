-- A unit shoots one day at a time.
create unique index schedule_day_shooting_key on schedule_day (unit_id) where state = 'SHOOTING';
