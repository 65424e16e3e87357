package rollbook.hire;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The items that are or were hired. */
@Repository
class HiredItems {
    private final JdbcClient jdbc;

    HiredItems(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Ordered by code; those too that went back. */
    List<HiredItem> of(UUID productionId) {
        return jdbc.sql("""
                        select i.id, i.code, i.kind, i.model, i.capacity_bytes, i.supplier,
                               i.cost_minor_units as week_minor_units, i.hired_until, i.condition, i.card_state,
                               p.name as place_name, i.holder, i.created_at as registered_at,
                               received.came_on, h.agreement_id
                        from inventory_item i
                        join production_place p on p.id = i.place_id
                        left join purchase_receipt_item r on r.item_id = i.id
                        left join purchase_receipt received on received.id = r.receipt_id
                        left join hire_item h on h.item_id = i.id
                        where i.production_id = ? and i.ownership = 'HIRED' order by upper(i.code)
                        """).param(productionId).query(HiredItem.class).list();
    }
}
