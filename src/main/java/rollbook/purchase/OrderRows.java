package rollbook.purchase;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.supplier.DeliveredTo;
import tools.jackson.databind.json.JsonMapper;

/** Reads orders with their lines and steps, in one statement. */
@Repository
class OrderRows {
    private static final String ORDERS = """
            select o.id, o.number, o.supplier_id, coalesce(s.name, '') as supplier_name, o.delivered_to,
                   o.delivery_minor_units, o.needed_by, o.note, o.source, o.source_name, o.version,
                   (select jsonb_agg(jsonb_build_object(
                            'id', l.id, 'position', l.position, 'catalogueItemId', l.catalogue_item_id, 'kind', l.kind,
                            'model', l.model, 'capacityBytes', l.capacity_bytes,
                            'readBytesPerSecond', l.read_bytes_per_second,
                            'writeBytesPerSecond', l.write_bytes_per_second, 'items', l.items,
                            'hireWeeks', l.hire_weeks, 'unitMinorUnits', l.unit_minor_units, 'legId', l.leg_id,
                            'legName', coalesce(g.name, ''), 'came', coalesce(a.came, 0),
                            'credited', coalesce(a.credited, 0), 'lastCameOn', a.last_came_on,
                            'receipts', coalesce(a.receipts, 0)) order by l.position, l.id)
                    from purchase_line l
                    left join production_leg g on g.id = l.leg_id
                    left join lateral (select * from purchase_line_arrival v where v.line_id = l.id) a on true
                    where l.order_id = o.id and not l.removed) as lines,
                   (select jsonb_agg(jsonb_build_object(
                            'number', t.number, 'kind', t.step, 'at', t.at, 'byId', t.by_id, 'byName', p.display_name,
                            'onDate', t.on_date, 'expectedOn', t.expected_on, 'reason', t.reason,
                            'takenBackStep', t.taken_back_step) order by t.number)
                    from purchase_step t join people_person p on p.id = t.by_id
                    where t.order_id = o.id) as steps,
                   greatest((select max(t.at) from purchase_step t where t.order_id = o.id),
                            (select max(greatest(r.at, w.at)) from purchase_receipt r
                             left join purchase_receipt_withdrawal w on w.receipt_id = r.id
                             where r.order_id = o.id)) as changed_at
            from purchase_order o
            left join supplier_supplier s on s.id = o.supplier_id
            where o.production_id = :production
            """;

    private final JdbcClient jdbc;

    OrderRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** In the order of their numbers. */
    List<PurchaseOrder> list(UUID productionId) {
        return jdbc.sql(ORDERS + " order by o.number")
                .param("production", productionId)
                .query(OrderRows::order)
                .list();
    }

    Optional<PurchaseOrder> find(UUID productionId, UUID orderId) {
        return jdbc.sql(ORDERS + " and o.id = :order")
                .param("production", productionId)
                .param("order", orderId)
                .query(OrderRows::order)
                .optional();
    }

    private static PurchaseOrder order(ResultSet row, int number) throws SQLException {
        return new PurchaseOrder(
                row.getObject("id", UUID.class),
                row.getInt("number"),
                row.getObject("supplier_id", UUID.class),
                row.getString("supplier_name"),
                DeliveredTo.valueOf(row.getString("delivered_to")),
                row.getLong("delivery_minor_units"),
                row.getObject("needed_by", LocalDate.class),
                row.getString("note"),
                PurchaseOrder.Source.valueOf(row.getString("source")),
                row.getString("source_name"),
                parts(row.getString("lines"), OrderLine[].class),
                parts(row.getString("steps"), OrderStep[].class),
                row.getTimestamp("changed_at").toInstant(),
                row.getInt("version"));
    }

    private static <T> List<T> parts(String json, Class<T[]> type) {
        return Arrays.asList(JsonMapper.shared().readValue(json, type));
    }
}
