-- What people did, in the order they did it. The person's name is kept as it was then.
create table audit_act (
    id            bigint generated always as identity primary key,
    production_id uuid,
    person_id     uuid,
    person_name   text        not null,
    at            timestamptz not null,
    action        text        not null,
    subject_kind  text        not null,
    subject_code  text        not null,
    detail        text        not null default ''
);
create index audit_act_production_ix on audit_act (production_id, id desc);
create trigger audit_act_immutable before update or delete on audit_act
    for each row execute function forbid_change();
