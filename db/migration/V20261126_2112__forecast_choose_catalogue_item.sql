-- A leg is supplied with an item of a supplier's catalogue. What was typed for each leg becomes suppliers, one for each
-- name with equal terms, and an item with its price for each leg; a leg that named no supplier gets one of its own name.
alter table forecast_supply add column catalogue_item_id uuid references supplier_item (id);

do $$
declare
    terms    record;
    leg      record;
    tried    text;
    times    int;
    supplier uuid;
    item     uuid;
begin
    for terms in
        select s.production_id, coalesce(nullif(s.supplier, ''), l.name) as name, s.country, s.order_cut_off,
               s.delivery_minor_units, s.lead_time_working_days, s.slow_lead_time_working_days,
               array_agg(s.leg_id order by l.position, l.id) as legs
        from forecast_supply s
        join production_leg l on l.id = s.leg_id
        group by 1, 2, 3, 4, 5, 6, 7
        order by 1, min(l.position), 2, 6, 7
    loop
        tried := terms.name;
        times := 1;
        while exists (select 1 from supplier_supplier
                      where production_id = terms.production_id and lower(name) = lower(tried)) loop
            times := times + 1;
            tried := terms.name || ' (' || times || ')';
        end loop;
        supplier := gen_random_uuid();
        insert into supplier_supplier (id, production_id, name, country, order_cut_off, delivery_minor_units,
            lead_time_working_days, slow_lead_time_working_days)
        values (supplier, terms.production_id, tried, terms.country, terms.order_cut_off, terms.delivery_minor_units,
            terms.lead_time_working_days, terms.slow_lead_time_working_days);
        for leg in
            select s.*, l.name as leg_name, l.media_kind
            from forecast_supply s
            join production_leg l on l.id = s.leg_id
            where s.leg_id = any (terms.legs)
        loop
            item := gen_random_uuid();
            -- Named as most of the pool's items that hold as much.
            insert into supplier_item (id, supplier_id, kind, model, capacity_bytes, pack_size)
            values (item, supplier, leg.media_kind,
                coalesce((select i.model from inventory_item i
                          where i.leg_id = leg.leg_id and i.capacity_bytes = leg.item_capacity_bytes and i.model <> ''
                          group by i.model order by count(*) desc, i.model limit 1), leg.leg_name),
                leg.item_capacity_bytes, leg.pack_size);
            insert into supplier_price (item_id, number, entered_at, valid_from, item_minor_units,
                hire_week_minor_units, hire_minimum_weeks)
            values (item, 1, now(), current_date, leg.item_price_minor_units, leg.hire_week_minor_units,
                leg.hire_minimum_weeks);
            update forecast_supply set catalogue_item_id = item where leg_id = leg.leg_id;
        end loop;
    end loop;
end $$;

-- Orders name their supplier and where they went; those from before, the one that their leg was supplied by.
alter table forecast_order
    add column supplier_id uuid references supplier_supplier (id),
    add column delivered_to text check (delivered_to in ('SET', 'OFFICE')),
    add constraint forecast_order_supplier_check check ((supplier_id is null) = (delivered_to is null));
create index forecast_order_supplier_ix on forecast_order (supplier_id);
alter table forecast_order disable trigger forecast_order_immutable;
update forecast_order o set supplier_id = i.supplier_id, delivered_to = s.delivered_to
from forecast_supply s
join supplier_item i on i.id = s.catalogue_item_id
where s.leg_id = o.leg_id;
alter table forecast_order enable trigger forecast_order_immutable;

-- When items came, which may be before somebody recorded it; null: on the day on which it was recorded.
alter table forecast_order_step add column came_on date;

alter table forecast_supply
    alter column catalogue_item_id set not null,
    drop column item_capacity_bytes,
    drop column pack_size,
    drop column item_price_minor_units,
    drop column supplier,
    drop column lead_time_working_days,
    drop column slow_lead_time_working_days,
    drop column country,
    drop column order_cut_off,
    drop column delivery_minor_units,
    drop column hire_week_minor_units,
    drop column hire_minimum_weeks;
create index forecast_supply_item_ix on forecast_supply (catalogue_item_id);
