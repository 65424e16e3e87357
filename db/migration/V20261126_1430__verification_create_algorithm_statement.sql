-- What reading found of the algorithms of a document: the lengths of digests, in digits, of which nobody can tell which
-- algorithm made them, and the algorithms that its empty files showed.
alter table verification_reading
    add column ambiguous_digits      int[]  not null default '{}',
    add column empty_file_algorithms text[] not null default '{}';

update verification_reading
set ambiguous_digits = array_remove(array[
    case when position('MD5' in algorithms) > 0 then 32 end,
    case when position('XXH64' in algorithms) > 0 then 16 end], null)
where basis = 'DIGEST_LENGTH';

-- What a person said that the digests of that length are; null takes back what was said. The newest counts.
create table verification_algorithm_statement (
    id            bigint      generated always as identity primary key,
    production_id uuid        not null references production_production (id),
    document_id   uuid        not null references verification_document (id),
    digits        int         not null,
    algorithm     text,
    said_at       timestamptz not null,
    said_by       uuid        not null references people_person (id),
    constraint verification_algorithm_statement_algorithm check (
        (digits = 16 and (algorithm is null or algorithm in ('XXH64', 'XXH3_64')))
        or (digits = 32 and (algorithm is null or algorithm in ('MD5', 'XXH128'))))
);
create index verification_algorithm_statement_document_ix on verification_algorithm_statement (document_id, digits, id desc);

create trigger verification_algorithm_statement_immutable before update or delete on verification_algorithm_statement
    for each row execute function forbid_change();
