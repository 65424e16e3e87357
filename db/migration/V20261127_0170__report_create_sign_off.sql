-- The facts of a day's report as somebody signed them: the bytes of its CSV file, known by their digest.
create table report_facts (
    production_id uuid  not null references production_production (id),
    sha256        bytea not null check (octet_length(sha256) = 32),
    content       text  not null,
    constraint report_facts_pk primary key (production_id, sha256)
);

-- A person's signature below a day's report. It is taken back by a withdrawal that names it.
create table report_sign_off (
    id            uuid        not null primary key,
    production_id uuid        not null,
    day_id        uuid        not null references schedule_day (id),
    sha256        bytea       not null,
    signed_at     timestamptz not null,
    signed_by     uuid        not null references people_person (id),
    remark        text        not null default '',
    constraint report_sign_off_facts foreign key (production_id, sha256) references report_facts (production_id, sha256)
);
create index report_sign_off_day_ix on report_sign_off (day_id, signed_at);

create table report_sign_off_withdrawal (
    sign_off_id  uuid        not null primary key references report_sign_off (id),
    withdrawn_at timestamptz not null,
    withdrawn_by uuid        not null references people_person (id),
    reason       text        not null check (reason <> '')
);

do
$$
declare evidence text;
begin
    foreach evidence in array array['report_facts', 'report_sign_off', 'report_sign_off_withdrawal']
    loop
        execute format('create trigger %I before update or delete on %I for each row execute function forbid_change()',
            evidence || '_immutable', evidence);
    end loop;
end
$$;
