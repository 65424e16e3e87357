-- Where a person's mail goes, and when it may. An address is used once its owner has confirmed it; until then the one
-- before stays in use. Of the code in the confirming link only the SHA-256 is kept.
create table mail_recipient (
    person_id      uuid        not null primary key references people_person (id),
    address        text,
    confirmed_at   timestamptz,
    wanted_address text,
    code_sha256    bytea       check (octet_length(code_sha256) = 32),
    code_until     timestamptz,
    portal         text        not null,
    zone           text        not null,
    quiet_from     time,
    quiet_until    time,
    wakes          boolean     not null default false,
    version        integer     not null default 1,
    constraint mail_recipient_confirmed check ((address is null) = (confirmed_at is null)),
    constraint mail_recipient_code check ((code_sha256 is null) = (code_until is null)),
    constraint mail_recipient_quiet check ((quiet_from is null) = (quiet_until is null)),
    constraint mail_recipient_code_key unique (code_sha256)
);

-- What a member wants to be told of a production; without a row what their roles suggest.
create table mail_subscription (
    production_id uuid    not null references production_production (id),
    person_id     uuid    not null references people_person (id),
    digest        boolean not null,
    alarms        boolean not null,
    weekly        boolean not null,
    muted         boolean not null,
    version       integer not null,
    primary key (production_id, person_id)
);

-- The outbox. A message is SENDING from before the talk with the mail server until after it; one that stays so was cut
-- off and becomes UNCERTAIN: it may have gone out. A confirmation belongs to no production.
create table mail_message (
    id            uuid        not null primary key,
    production_id uuid        references production_production (id),
    person_id     uuid        not null references people_person (id),
    kind          text        not null constraint mail_message_kind check (kind in ('CONFIRMATION', 'DIGEST', 'ALARM', 'WEEKLY')),
    subject       text        not null,
    text          text        not null,
    html          text        not null,
    message_id    text        not null constraint mail_message_message_id_key unique,
    created_at    timestamptz not null,
    not_before    timestamptz not null,
    not_after     timestamptz not null,
    state         text        not null constraint mail_message_state
                              check (state in ('WAITING', 'SENDING', 'SENT', 'UNCERTAIN', 'FAILED', 'EXPIRED', 'WITHDRAWN')),
    attempts      integer     not null default 0,
    tried_at      timestamptz,
    address       text,
    failure       text        not null default '',
    sent_at       timestamptz,
    bounced_at    timestamptz,
    bounce        text        not null default '',
    constraint mail_message_of_production check ((production_id is null) = (kind = 'CONFIRMATION')),
    constraint mail_message_sent check (state <> 'SENT' or sent_at is not null),
    constraint mail_message_tried check (attempts = 0 or (tried_at is not null and address is not null))
);
create index mail_message_due_ix on mail_message (not_before) where state in ('WAITING', 'SENDING');
create index mail_message_production_ix on mail_message (production_id, created_at desc);
create index mail_message_person_ix on mail_message (person_id, created_at desc);

-- What a person has been told in a message, or was to be: nobody is told anything twice.
create table mail_told (
    production_id uuid not null references production_production (id),
    person_id     uuid not null references people_person (id),
    about         text not null,
    message_id    uuid not null references mail_message (id) deferrable initially deferred,
    primary key (production_id, person_id, about)
);

-- Wrapped days of which nobody has been told yet.
create table mail_wrapped_day (
    day_id        uuid        not null primary key references schedule_day (id) on delete cascade,
    production_id uuid        not null references production_production (id),
    wrapped_at    timestamptz not null
);

-- The one-time links that end mail of a message's kind; one for each time that the message was handed to the server.
create table mail_unsubscription (
    secret_sha256 bytea       not null primary key check (octet_length(secret_sha256) = 32),
    message_id    uuid        not null references mail_message (id),
    used_at       timestamptz
);
