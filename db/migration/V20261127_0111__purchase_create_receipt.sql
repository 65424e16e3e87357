-- What came of an order: counted, and the good items by their numbers in the book. The id comes with the form, so the
-- same form sent twice is one receipt.
create table purchase_receipt (
    id       uuid        not null primary key,
    order_id uuid        not null references purchase_order (id),
    number   int         not null check (number > 0),
    came_on  date        not null,
    at       timestamptz not null,
    by_id    uuid        not null references people_person (id),
    note     text        not null default '',
    constraint purchase_receipt_number_key unique (order_id, number)
);
create trigger purchase_receipt_immutable before update or delete on purchase_receipt
    for each row execute function forbid_change();

create table purchase_receipt_line (
    receipt_id uuid not null references purchase_receipt (id),
    line_id    uuid not null references purchase_line (id),
    good       int  not null check (good >= 0),
    constraint purchase_receipt_line_pk primary key (receipt_id, line_id)
);
create index purchase_receipt_line_line_ix on purchase_receipt_line (line_id);
create trigger purchase_receipt_line_immutable before update or delete on purchase_receipt_line
    for each row execute function forbid_change();

-- Items that came and aren't what was ordered: broken, or something else.
create table purchase_receipt_fault (
    receipt_id uuid not null,
    line_id    uuid not null,
    kind       text not null check (kind in ('DAMAGED', 'WRONG')),
    items      int  not null check (items > 0),
    words      text not null check (words <> ''),
    remedy     text not null check (remedy in ('REPLACED', 'CREDITED')),
    constraint purchase_receipt_fault_pk primary key (receipt_id, line_id, kind),
    constraint purchase_receipt_fault_line foreign key (receipt_id, line_id)
        references purchase_receipt_line (receipt_id, line_id)
);
create trigger purchase_receipt_fault_immutable before update or delete on purchase_receipt_fault
    for each row execute function forbid_change();

create table purchase_receipt_item (
    item_id    uuid not null primary key references inventory_item (id),
    receipt_id uuid not null,
    line_id    uuid not null,
    constraint purchase_receipt_item_line foreign key (receipt_id, line_id)
        references purchase_receipt_line (receipt_id, line_id)
);
create index purchase_receipt_item_receipt_ix on purchase_receipt_item (receipt_id, line_id);
create trigger purchase_receipt_item_immutable before update or delete on purchase_receipt_item
    for each row execute function forbid_change();

-- A receipt that was wrong: taken back as a whole, and then nothing of it counts.
create table purchase_receipt_withdrawal (
    receipt_id uuid        not null primary key references purchase_receipt (id),
    at         timestamptz not null,
    by_id      uuid        not null references people_person (id),
    reason     text        not null check (reason <> '')
);
create trigger purchase_receipt_withdrawal_immutable before update or delete on purchase_receipt_withdrawal
    for each row execute function forbid_change();

-- Of each line how many items came in order, how many won't and aren't paid for, when the last came, and from how many
-- receipts that is known.
create view purchase_line_arrival as
select l.id as line_id,
       coalesce(sum(r.good), 0)::int as came,
       coalesce(sum(r.credited), 0)::int as credited,
       max(r.came_on) filter (where r.good > 0) as last_came_on,
       count(r.receipt_id)::int as receipts
from purchase_line l
left join (
    select rl.line_id, rl.receipt_id, rl.good, p.came_on,
           (select sum(f.items) from purchase_receipt_fault f
            where f.receipt_id = rl.receipt_id and f.line_id = rl.line_id and f.remedy = 'CREDITED') as credited
    from purchase_receipt_line rl
    join purchase_receipt p on p.id = rl.receipt_id
    where not exists (select 1 from purchase_receipt_withdrawal w where w.receipt_id = p.id)
) r on r.line_id = l.id
group by l.id;
