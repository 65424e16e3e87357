package rollbook.purchase;

import java.sql.Date;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.Membership;
import rollbook.purchase.OrderStep.Kind;

/** Writes orders and their steps. */
@Repository
class OrderStore {
    private final JdbcClient jdbc;
    private final Clock clock;

    OrderStore(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A step before it has a number. */
    record Step(
            Kind kind,
            @Nullable LocalDate onDate,
            @Nullable LocalDate expectedOn,
            String reason,
            @Nullable Integer takenBackStep) {}

    /** Adds an order under the next number, and that it was proposed. */
    UUID add(Membership by, @Nullable UUID supplierId, NewOrder order, long deliveryMinorUnits) {
        UUID id = UUID.randomUUID();
        int added = 0;
        // Of two people at once the second waits until the first has the number, and takes the next one.
        while (added == 0) {
            added = with(order, deliveryMinorUnits, supplierId, """
                            insert into purchase_order (id, production_id, number, supplier_id, delivered_to,
                                delivery_minor_units, needed_by, note, source, source_name)
                            select :id, :production, coalesce(max(number), 0) + 1, cast(:supplier as uuid), :deliveredTo,
                                :delivery, cast(:neededBy as date), :note, :source, :sourceName
                            from purchase_order where production_id = :production
                            on conflict on constraint purchase_order_number_uq do nothing
                            """)
                    .param("id", id)
                    .param("production", by.productionId())
                    .param("source", order.source().name())
                    .param("sourceName", order.sourceName())
                    .update();
        }
        addStep(by, id, 1, new Step(Kind.PROPOSED, null, null, "", null));
        return id;
    }

    void change(UUID orderId, @Nullable UUID supplierId, NewOrder order, long deliveryMinorUnits) {
        with(order, deliveryMinorUnits, supplierId, """
                        update purchase_order set supplier_id = :supplier, delivered_to = :deliveredTo,
                            delivery_minor_units = :delivery, needed_by = :neededBy, note = :note
                        where id = :id
                        """).param("id", orderId).update();
    }

    private JdbcClient.StatementSpec with(
            NewOrder order, long deliveryMinorUnits, @Nullable UUID supplierId, String sql) {
        return jdbc.sql(sql)
                .param("supplier", supplierId, Types.OTHER)
                .param("deliveredTo", order.deliveredTo().name())
                .param("delivery", deliveryMinorUnits)
                .param("neededBy", order.neededBy() == null ? null : Date.valueOf(order.neededBy()), Types.DATE)
                .param("note", order.note());
    }

    /** Takes an order's next version and holds it until the transaction ends; false if it is taken. */
    boolean bump(PurchaseOrder order) {
        return jdbc.sql("update purchase_order set version = version + 1 where id = ? and version = ?")
                        .params(order.id(), order.version())
                        .update()
                > 0;
    }

    void addStep(Membership by, PurchaseOrder order, Step step) {
        addStep(by, order.id(), order.steps().size() + 1, step);
    }

    private void addStep(Membership by, UUID orderId, int number, Step step) {
        jdbc.sql("""
                        insert into purchase_step (order_id, number, at, by_id, step, on_date, expected_on, reason, taken_back_step)
                        values (:order, :number, :now, :by, :step, :onDate, :expectedOn, :reason, :takenBack)
                        """)
                .param("order", orderId)
                .param("number", number)
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by.personId())
                .param("step", step.kind().name())
                .param("onDate", step.onDate() == null ? null : Date.valueOf(step.onDate()), Types.DATE)
                .param("expectedOn", step.expectedOn() == null ? null : Date.valueOf(step.expectedOn()), Types.DATE)
                .param("reason", step.reason())
                .param("takenBack", step.takenBackStep(), Types.INTEGER)
                .update();
    }
}
