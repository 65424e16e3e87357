-- Which of its places a production calls post.
create table post_place (
    production_id uuid not null primary key references production_production (id),
    place_id      uuid not null references production_place (id),
    version       int  not null default 0
);

-- What somebody at post says of an item that came there by the chain of custody: it is here, or it isn't. It speaks of the
-- link by which the item came; the newest one counts.
create table post_word (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    item_id       uuid        not null references inventory_item (id),
    custody_id    bigint      not null references inventory_custody (id),
    here          boolean     not null,
    note          text        not null default '',
    at            timestamptz not null,
    by_id         uuid        not null references people_person (id)
);
create index post_word_custody_ix on post_word (custody_id, id desc);

-- A set of a leg's media was made: all that was shot up to the end of a day lies on them. What is missing or not proven
-- stands in it for good, with the reason why it was made all the same. A correction names the set that it replaces.
create table post_set (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    number        int         not null check (number > 0),
    leg_id        uuid        not null references production_leg (id),
    up_to_day_id  uuid        not null references schedule_day (id),
    note          text        not null default '',
    -- Empty if every roll is on the leg and proven.
    reason        text        not null default '',
    at            timestamptz not null,
    by_id         uuid        not null references people_person (id),
    replaces      uuid        references post_set (id),
    constraint post_set_number_key unique (production_id, number),
    constraint post_set_replaces_key unique (replaces)
);

-- The rolls of a set, and what was proven of each; one that is on none of its media has no item.
create table post_set_roll (
    set_id    uuid    not null references post_set (id) deferrable initially deferred,
    position  int     not null check (position > 0),
    roll_id   uuid    not null references offload_roll (id),
    roll_code text    not null,
    item_id   uuid    references inventory_item (id),
    item_code text,
    -- Where the item lay.
    place     text,
    verdict   text    check (verdict in ('PROVEN', 'CONSISTENT', 'SIZE_ONLY', 'INCOMPLETE', 'FAILED', 'UNKNOWN')),
    proven    boolean not null,
    constraint post_set_roll_pk primary key (set_id, position),
    constraint post_set_roll_item_check check ((item_id is null) = (verdict is null) and (item_id is null) = (place is null)
        and (item_id is null) = (item_code is null) and (item_id is not null or not proven))
);

-- A set that was recorded by mistake, and never was.
create table post_set_withdrawal (
    set_id uuid        not null primary key references post_set (id),
    at     timestamptz not null,
    by_id  uuid        not null references people_person (id),
    reason text        not null
);

do
$$
declare evidence text;
begin
    foreach evidence in array array['post_word', 'post_set', 'post_set_roll', 'post_set_withdrawal']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function forbid_change()',
            evidence || '_immutable', evidence);
    end loop;
end
$$;
