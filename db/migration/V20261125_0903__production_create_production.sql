create table production_production (
    id           uuid        primary key,
    code         text        not null,
    name         text        not null,
    time_zone    text        not null,
    currency     text        not null,
    working_days text        not null default 'MONDAY,TUESDAY,WEDNESDAY,THURSDAY,FRIDAY',
    created_at   timestamptz not null,
    version      int         not null default 0,
    constraint production_production_code_format check (code ~ '^[A-Z0-9][A-Z0-9-]{1,19}$')
);
create unique index production_production_code_key on production_production (code);

create table production_holiday (
    production_id uuid not null references production_production (id),
    date          date not null,
    name          text not null,
    constraint production_holiday_pk primary key (production_id, date)
);

create table production_member (
    production_id uuid not null references production_production (id),
    person_id     uuid not null references people_person (id),
    role          text not null check (role in ('WRANGLER', 'OFFICE', 'POST', 'READER', 'ADMINISTRATOR')),
    constraint production_member_pk primary key (production_id, person_id, role)
);
create index production_member_person_ix on production_member (person_id);

create table production_unit (
    id            uuid not null primary key,
    production_id uuid not null references production_production (id),
    name          text not null,
    position      int  not null
);
create unique index production_unit_name_key on production_unit (production_id, lower(name));

create table production_camera (
    id            uuid not null primary key,
    production_id uuid not null references production_production (id),
    unit_id       uuid not null references production_unit (id),
    letter        text not null check (letter ~ '^[A-Z]$')
);
create unique index production_camera_letter_key on production_camera (production_id, letter);

create table production_place (
    id            uuid    not null primary key,
    production_id uuid    not null references production_production (id),
    name          text    not null,
    off_site      boolean not null,
    position      int     not null
);
create unique index production_place_name_key on production_place (production_id, lower(name));

-- A leg of the copy plan. returns_after_days null: the medium is kept.
create table production_leg (
    id                 uuid    not null primary key,
    production_id      uuid    not null references production_production (id),
    name               text    not null,
    media_kind         text    not null check (media_kind in ('DRIVE', 'ARRAY', 'TAPE')),
    place_id           uuid    not null references production_place (id),
    rendition          text    not null check (rendition in ('AS_RECORDED', 'ENCODED')),
    kept_percent       int     not null default 100 check (kept_percent between 1 and 100),
    returns_after_days int     check (returns_after_days >= 0),
    needed_to_clear    boolean not null,
    position           int     not null,
    version            int     not null default 0
);
create unique index production_leg_name_key on production_leg (production_id, lower(name));

-- What clears a card: at least so many proven copies, on so many different items, kinds of media and places.
create table production_clearing_policy (
    production_id   uuid    not null primary key references production_production (id),
    proven_copies   int     not null check (proven_copies between 1 and 9),
    items           int     not null check (items between 1 and 9),
    media_kinds     int     not null check (media_kinds between 1 and 3),
    places          int     not null check (places between 1 and 9),
    off_site        boolean not null,
    version         int     not null default 0
);
