-- The number that the maker gave an item. A hired thing that went back may come again, so what left doesn't count.
alter table inventory_item add column serial text not null default '';
alter table inventory_item add constraint inventory_item_serial check (char_length(serial) <= 64);
create unique index inventory_item_serial_key on inventory_item (production_id, upper(serial))
    where serial <> '' and condition not in ('RETIRED', 'RETURNED');

-- An item that was registered by mistake leaves the book's present again; that it stood there stays to be read.
alter table inventory_custody drop constraint inventory_custody_act_check;
alter table inventory_custody add constraint inventory_custody_act_check check (
    act in ('REGISTERED', 'MOVED', 'QUARANTINED', 'RELEASED', 'RETIRED', 'RETURNED', 'LOST', 'FOUND', 'WITHDRAWN'));
