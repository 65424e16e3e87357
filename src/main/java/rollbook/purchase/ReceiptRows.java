package rollbook.purchase;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.Membership;
import tools.jackson.databind.json.JsonMapper;

/** Reads and writes receipts. */
@Repository
class ReceiptRows {
    private final JdbcClient jdbc;
    private final Clock clock;

    ReceiptRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Of an order that the caller has looked up, in the order of their numbers and in one statement. */
    List<Receipt> list(PurchaseOrder order) {
        return jdbc.sql("""
                        select r.id, r.number, r.came_on, r.at, p.display_name as by_name, r.note,
                               w.at as taken_back_at, b.display_name as taken_back_by, w.reason,
                               (select jsonb_agg(jsonb_build_object(
                                        'lineId', rl.line_id, 'kind', l.kind, 'model', l.model, 'good', rl.good,
                                        'faults', (select coalesce(jsonb_agg(jsonb_build_object(
                                                    'kind', f.kind, 'items', f.items, 'words', f.words, 'remedy', f.remedy)
                                                    order by f.kind), '[]')
                                                from purchase_receipt_fault f
                                                where f.receipt_id = r.id and f.line_id = rl.line_id),
                                        'items', (select coalesce(jsonb_agg(jsonb_build_object(
                                                    'id', i.id, 'code', i.code, 'serial', i.serial) order by upper(i.code)), '[]')
                                                from purchase_receipt_item ri join inventory_item i on i.id = ri.item_id
                                                where ri.receipt_id = r.id and ri.line_id = rl.line_id))
                                        order by l.position, l.id)
                                from purchase_receipt_line rl join purchase_line l on l.id = rl.line_id
                                where rl.receipt_id = r.id) as lines
                        from purchase_receipt r
                        join people_person p on p.id = r.by_id
                        left join purchase_receipt_withdrawal w on w.receipt_id = r.id
                        left join people_person b on b.id = w.by_id
                        where r.order_id = ? order by r.number
                        """).param(order.id()).query(ReceiptRows::receipt).list();
    }

    private static Receipt receipt(ResultSet row, int number) throws SQLException {
        return new Receipt(
                row.getObject("id", UUID.class),
                row.getInt("number"),
                row.getObject("came_on", LocalDate.class),
                row.getTimestamp("at").toInstant(),
                row.getString("by_name"),
                row.getString("note"),
                takenBack(row),
                Arrays.asList(JsonMapper.shared().readValue(row.getString("lines"), Receipt.Line[].class)));
    }

    private static Receipt.@Nullable TakenBack takenBack(ResultSet row) throws SQLException {
        Timestamp at = row.getTimestamp("taken_back_at");
        return at == null
                ? null
                : new Receipt.TakenBack(at.toInstant(), row.getString("taken_back_by"), row.getString("reason"));
    }

    /** Keeps everybody else from receiving or changing an order until the transaction ends. */
    void lock(UUID orderId) {
        jdbc.sql("select id from purchase_order where id = ? for update")
                .param(orderId)
                .query(UUID.class)
                .optional();
    }

    boolean isThere(UUID orderId, UUID receiptId) {
        return jdbc.sql("select exists (select 1 from purchase_receipt where id = ? and order_id = ?)")
                .params(receiptId, orderId)
                .query(Boolean.class)
                .single();
    }

    /**
     * Adds a receipt under the next number of an order that is locked.
     *
     * @return false if another order has a receipt with that id
     */
    boolean add(Membership by, UUID orderId, NewReceipt receipt) {
        int added = jdbc.sql("""
                        insert into purchase_receipt (id, order_id, number, came_on, at, by_id, note)
                        select :id, :order, coalesce(max(number), 0) + 1, :cameOn, :now, :by, :note
                        from purchase_receipt where order_id = :order
                        on conflict (id) do nothing
                        """)
                .param("id", receipt.id())
                .param("order", orderId)
                .param("cameOn", Date.valueOf(receipt.cameOn()))
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by.personId())
                .param("note", receipt.note())
                .update();
        return added > 0;
    }

    void addLine(UUID receiptId, NewReceipt.Line line) {
        jdbc.sql("insert into purchase_receipt_line (receipt_id, line_id, good) values (?, ?, ?)")
                .params(receiptId, line.lineId(), line.good())
                .update();
        for (Fault fault : line.faults()) {
            jdbc.sql("""
                            insert into purchase_receipt_fault (receipt_id, line_id, kind, items, words, remedy)
                            values (?, ?, ?, ?, ?, ?)
                            """)
                    .params(
                            receiptId,
                            line.lineId(),
                            fault.kind().name(),
                            fault.items(),
                            fault.words(),
                            fault.remedy().name())
                    .update();
        }
    }

    void addItems(UUID receiptId, UUID lineId, List<UUID> itemIds) {
        jdbc.sql("""
                        insert into purchase_receipt_item (receipt_id, line_id, item_id)
                        select :receipt, :line, i.id from inventory_item i where i.id in (:items)
                        """)
                .param("receipt", receiptId)
                .param("line", lineId)
                .param("items", itemIds)
                .update();
    }

    void takeBack(Membership by, UUID receiptId, String reason) {
        jdbc.sql("insert into purchase_receipt_withdrawal (receipt_id, at, by_id, reason) values (?, ?, ?, ?)")
                .params(receiptId, Timestamp.from(clock.instant()), by.personId(), reason)
                .update();
    }
}
