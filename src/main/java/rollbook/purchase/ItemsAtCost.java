package rollbook.purchase;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;

/** Every item that was ever registered, with its own price and the line of an order with which it came, in one statement. */
@Repository
public class ItemsAtCost {
    private final JdbcClient jdbc;

    ItemsAtCost(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param costMinorUnits price if bought, price per week if hired; null if nobody knows
     * @param lineId of the order; null if it came without one
     */
    public record ItemAtCost(
            UUID id,
            String code,
            MediaKind kind,
            String model,
            Ownership ownership,
            @Nullable Long costMinorUnits,
            @Nullable UUID legId,
            @Nullable UUID lineId) {}

    /** Ordered by code; nothing of a receipt that was taken back, for that was struck out. */
    public List<ItemAtCost> of(UUID productionId) {
        return jdbc.sql("""
                        select i.id, i.code, i.kind, i.model, i.ownership, i.cost_minor_units, i.leg_id, r.line_id
                        from inventory_item i
                        left join purchase_receipt_item r on r.item_id = i.id
                        left join purchase_receipt_withdrawal w on w.receipt_id = r.receipt_id
                        where i.production_id = ? and w.receipt_id is null
                        order by upper(i.code)
                        """).param(productionId).query(ItemAtCost.class).list();
    }
}
