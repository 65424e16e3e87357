-- Media on order becomes orders of one line, placed, under the same ids. What came are receipts; what was recorded by
-- mistake and taken back stays as that. Of their prices nothing was kept.
insert into purchase_order (id, production_id, number, supplier_id, delivered_to, delivery_minor_units, note, source,
    source_name, version)
select o.id, o.production_id, row_number() over (partition by o.production_id order by o.entered_at, o.id), o.supplier_id,
       coalesce(o.delivered_to, 'OFFICE'), 0, o.note, 'HAND', '',
       (select count(*) from forecast_order_step s where s.order_id = o.id)
from forecast_order o;

insert into purchase_line (id, order_id, position, catalogue_item_id, kind, model, capacity_bytes,
    read_bytes_per_second, write_bytes_per_second, items, leg_id)
select o.id, o.id, 1, i.id, l.media_kind, coalesce(i.model, l.name), o.item_capacity_bytes,
       i.read_bytes_per_second, i.write_bytes_per_second, o.items, o.leg_id
from forecast_order o
join production_leg l on l.id = o.leg_id
left join forecast_supply s on s.leg_id = o.leg_id
left join supplier_item i on i.id = s.catalogue_item_id and i.supplier_id = o.supplier_id
    and i.capacity_bytes = o.item_capacity_bytes;

insert into purchase_step (order_id, number, at, by_id, step)
select id, 1, entered_at, entered_by, 'PROPOSED' from forecast_order;
insert into purchase_step (order_id, number, at, by_id, step, on_date, expected_on)
select id, 2, entered_at, entered_by, 'PLACED', ordered_on, expected_on from forecast_order;

insert into purchase_receipt (id, order_id, number, came_on, at, by_id)
select md5(s.order_id::text || s.number)::uuid, s.order_id,
       row_number() over (partition by s.order_id order by s.number),
       coalesce(s.came_on, (s.at at time zone p.time_zone)::date), s.at, s.by_id
from forecast_order_step s
join forecast_order o on o.id = s.order_id
join production_production p on p.id = o.production_id
where s.step = 'CAME';
insert into purchase_receipt_line (receipt_id, line_id, good)
select md5(s.order_id::text || s.number)::uuid, s.order_id, s.items from forecast_order_step s where s.step = 'CAME';
insert into purchase_receipt_withdrawal (receipt_id, at, by_id, reason)
select md5(s.order_id::text || s.number)::uuid, b.at, b.by_id, 'No reason was asked for.'
from forecast_order_step s
join forecast_order_step b on b.order_id = s.order_id and b.taken_back_step = s.number
where s.step = 'CAME';

with steps as (
    select s.*, 2 + row_number() over (partition by s.order_id order by s.number) as new_number
    from forecast_order_step s
    left join forecast_order_step t on t.order_id = s.order_id and t.number = s.taken_back_step
    where s.step = 'CANCELLED' or t.step = 'CANCELLED'
)
insert into purchase_step (order_id, number, at, by_id, step, reason, taken_back_step)
select s.order_id, s.new_number, s.at, s.by_id, s.step,
       case s.step when 'CANCELLED' then 'No reason was asked for.' else '' end, t.new_number
from steps s
left join steps t on t.order_id = s.order_id and t.number = s.taken_back_step
order by s.order_id, s.new_number;

alter table forecast_flag_act
    drop constraint forecast_flag_act_order_id_fkey,
    add constraint forecast_flag_act_order_fk foreign key (order_id) references purchase_order (id);
drop table forecast_order_step;
drop table forecast_order;
