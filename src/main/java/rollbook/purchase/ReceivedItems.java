package rollbook.purchase;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Which media items came with which line of an order; nothing of receipts that were taken back. */
@Repository
public class ReceivedItems {
    private final JdbcClient jdbc;

    ReceivedItems(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public record ReceivedItem(UUID itemId, UUID lineId) {}

    public List<ReceivedItem> of(UUID productionId) {
        return jdbc.sql("""
                        select i.item_id, i.line_id
                        from purchase_receipt_item i
                        join purchase_receipt r on r.id = i.receipt_id
                        join purchase_order o on o.id = r.order_id
                        where o.production_id = ?
                          and not exists (select 1 from purchase_receipt_withdrawal w where w.receipt_id = r.id)
                        """).param(productionId).query(ReceivedItem.class).list();
    }
}
