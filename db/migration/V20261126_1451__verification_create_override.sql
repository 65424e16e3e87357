-- Clearing a card without proof: one person asks and gives the reason, another approves. What held the card when it was
-- asked is kept with the request, and only that can be approved. A request ends by an approval or a withdrawal.
create table verification_override_request (
    id             uuid        not null primary key,
    production_id  uuid        not null references production_production (id),
    roll_id        uuid        not null references offload_roll (id),
    card_id        uuid        not null references inventory_item (id),
    requested_at   timestamptz not null,
    requested_by   uuid        not null references people_person (id),
    reason         text        not null,
    holds          text[]      not null,
    holds_in_words text[]      not null,
    nothing_proven boolean     not null,
    constraint verification_override_request_reason check (length(reason) >= 20),
    constraint verification_override_request_asked_by unique (id, requested_by)
);
create index verification_override_request_roll_ix on verification_override_request (roll_id);
create index verification_override_request_production_ix on verification_override_request (production_id);

-- Nobody approves what they asked for: the table itself refuses it.
create table verification_override_approval (
    request_id   uuid        not null primary key,
    requested_by uuid        not null,
    approved_at  timestamptz not null,
    approved_by  uuid        not null references people_person (id),
    clearance_id uuid        not null unique references verification_clearance (id),
    constraint verification_override_approval_request foreign key (request_id, requested_by)
        references verification_override_request (id, requested_by),
    constraint verification_override_approval_other_person check (approved_by <> requested_by)
);

create table verification_override_withdrawal (
    request_id   uuid        not null primary key references verification_override_request (id),
    withdrawn_at timestamptz not null,
    withdrawn_by uuid        not null references people_person (id),
    reason       text        not null
);

do
$$
declare evidence text;
begin
    foreach evidence in array array['verification_override_request', 'verification_override_approval',
        'verification_override_withdrawal']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function forbid_change()',
            evidence || '_immutable', evidence);
    end loop;
end
$$;
