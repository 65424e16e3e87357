-- A drive, array or tape may be erased because every roll on it is proven elsewhere. As with cards, a clearance stands
-- until a withdrawal names it, and is used up by an erasure.
create table verification_medium_clearance (
    id            uuid        not null primary key,
    production_id uuid        not null references production_production (id),
    item_id       uuid        not null references inventory_item (id),
    cleared_at    timestamptz not null,
    cleared_by    uuid        not null references people_person (id),
    policy        text        not null,
    verdict_ids   bigint[]    not null
);
create index verification_medium_clearance_item_ix on verification_medium_clearance (item_id);
create index verification_medium_clearance_production_ix on verification_medium_clearance (production_id);

create table verification_medium_withdrawal (
    clearance_id uuid        not null primary key references verification_medium_clearance (id),
    withdrawn_at timestamptz not null,
    reason       text        not null check (reason in ('PROOF_LOST', 'WRITTEN_TO'))
);

create table verification_medium_erasure (
    clearance_id uuid        not null primary key references verification_medium_clearance (id),
    erased_at    timestamptz not null,
    erased_by    uuid        not null references people_person (id)
);

do
$$
declare evidence text;
begin
    foreach evidence in array array['verification_medium_clearance', 'verification_medium_withdrawal',
        'verification_medium_erasure']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function forbid_change()',
            evidence || '_immutable', evidence);
    end loop;
end
$$;
