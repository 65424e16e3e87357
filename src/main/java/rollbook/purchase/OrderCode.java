package rollbook.purchase;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** Order 7. */
@Component
class OrderCode implements CodeKind {
    @Override
    public String numbered() {
        return "purchase.one.title";
    }

    /** The state is what {@link PurchaseOrder#state} says. */
    @Override
    public String rows() {
        return """
                select o.id, 'purchase.code' as what, o.number::text as code, '' as also,
                       coalesce(s.name, '') as detail, null::date as on_date,
                       'purchase.state.' || case
                         when 'CLOSED' = any(t.steps) then 'CLOSED'
                         when 'DECLINED' = any(t.steps) then 'DECLINED'
                         when 'CANCELLED' = any(t.steps) then case when a.came > 0 then 'ARRIVED' else 'CANCELLED' end
                         when 'PLACED' = any(t.steps) then
                           case when a.all_here then 'ARRIVED' when a.came > 0 then 'PART_ARRIVED' else 'PLACED' end
                         when 'APPROVED' = any(t.steps) then 'APPROVED' else 'PROPOSED' end as state,
                       false as past
                from purchase_order o
                left join supplier_supplier s on s.id = o.supplier_id
                cross join lateral (
                    select array_agg(x.step) as steps from purchase_step x
                    where x.order_id = o.id and not exists (
                        select 1 from purchase_step back where back.order_id = o.id and back.taken_back_step = x.number)) t
                cross join lateral (
                    select coalesce(sum(v.came), 0) as came,
                           coalesce(bool_and(l.items - coalesce(v.came, 0) - coalesce(v.credited, 0) = 0), true) as all_here
                    from purchase_line l left join lateral (
                        select * from purchase_line_arrival w where w.line_id = l.id) v on true
                    where l.order_id = o.id and not l.removed) a
                where o.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "orders/" + id;
    }
}
