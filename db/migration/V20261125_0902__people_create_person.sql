create table people_person (
    id            uuid        primary key,
    sign_in_name  text        not null,
    display_name  text        not null,
    password_hash text        not null,
    created_at    timestamptz not null
);
create unique index people_person_sign_in_name_key on people_person (lower(sign_in_name));

-- The one-time code that opens the set-up page; at most one row, gone once the first account exists.
create table people_setup_code (
    only_row   boolean     primary key default true check (only_row),
    code_hash  text        not null,
    created_at timestamptz not null
);
