package rollbook.forecast;

import java.sql.Date;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The media that is on order; the forecast counts on it. */
@Service
public class MediaOrders {
    private static final String ORDERS = """
            select o.id, o.leg_id, l.name as leg_name, o.supplier_id, coalesce(f.name, '') as supplier_name,
                   o.ordered_on, o.expected_on, o.items, o.item_capacity_bytes, o.note,
                   coalesce(sum(s.items) filter (where s.step = 'CAME' and b.number is null), 0)::int as came,
                   coalesce(bool_or(s.step = 'CANCELLED' and b.number is null), false) as cancelled,
                   greatest(o.entered_at, max(s.at)) as changed_at, count(s.number)::int as steps
            from forecast_order o
            join production_leg l on l.id = o.leg_id
            left join supplier_supplier f on f.id = o.supplier_id
            left join forecast_order_step s on s.order_id = o.id
            left join forecast_order_step b on b.order_id = s.order_id and b.taken_back_step = s.number
            where o.production_id = :production
            """;

    private static final String GROUPED = " group by o.id, l.name, f.name order by o.expected_on, o.entered_at, o.id";

    private final JdbcClient jdbc;
    private final CopyPlan plan;
    private final FlagActs flags;
    private final AuditTrail trail;
    private final ForecastRequests requests;
    private final Clock clock;

    MediaOrders(
            JdbcClient jdbc, CopyPlan plan, FlagActs flags, AuditTrail trail, ForecastRequests requests, Clock clock) {
        this.jdbc = jdbc;
        this.plan = plan;
        this.flags = flags;
        this.trail = trail;
        this.requests = requests;
        this.clock = clock;
    }

    /** What was ordered. */
    public record NewOrder(
            UUID legId, LocalDate orderedOn, LocalDate expectedOn, int items, long itemCapacityBytes, String note) {}

    List<MediaOrder> list(UUID productionId) {
        return jdbc.sql(ORDERS + GROUPED)
                .param("production", productionId)
                .query(MediaOrder.class)
                .list();
    }

    /** What may still come, by the date on which it is expected. */
    public List<MediaOrder> expected(UUID productionId) {
        return list(productionId).stream().filter(MediaOrder::isOpen).toList();
    }

    /** @throws NotFoundException if this production has no such order */
    MediaOrder get(UUID productionId, UUID orderId) {
        return jdbc.sql(ORDERS + " and o.id = :order" + GROUPED)
                .param("production", productionId)
                .param("order", orderId)
                .query(MediaOrder.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** What was recorded of an order that the caller has looked up, oldest first; nothing of what was taken back. */
    List<OrderStep> steps(MediaOrder order) {
        return jdbc.sql("""
                        select s.number, s.step, s.items, s.came_on, s.at, p.display_name as by_name
                        from forecast_order_step s
                        join people_person p on p.id = s.by_id
                        where s.order_id = ? and s.step <> 'TAKEN_BACK' and not exists (
                            select 1 from forecast_order_step b
                            where b.order_id = s.order_id and b.taken_back_step = s.number)
                        order by s.number
                        """).param(order.id()).query(OrderStep.class).list();
    }

    /** Keeps an order from whom the leg is supplied by; what flag the leg's pool has is closed by it. */
    @Transactional
    public UUID enter(Membership by, NewOrder order) {
        String legName = plan.leg(by.productionId(), order.legId()).name();
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into forecast_order (id, production_id, leg_id, entered_at, entered_by, ordered_on,
                            expected_on, items, item_capacity_bytes, note, supplier_id, delivered_to)
                        select o.*, i.supplier_id, s.delivered_to
                        from (values (?::uuid, ?::uuid, ?::uuid, ?::timestamptz, ?::uuid, ?::date, ?::date, ?::int,
                            ?::bigint, ?)) o (id, production_id, leg_id, at, by_id, ordered_on, expected_on, items, bytes, note)
                        left join forecast_supply s on s.leg_id = o.leg_id
                        left join supplier_item i on i.id = s.catalogue_item_id
                        """)
                .params(
                        id,
                        by.productionId(),
                        order.legId(),
                        Timestamp.from(clock.instant()),
                        by.personId(),
                        Date.valueOf(order.orderedOn()),
                        Date.valueOf(order.expectedOn()),
                        order.items(),
                        order.itemCapacityBytes(),
                        order.note())
                .update();
        flags.closeByOrder(by, order.legId(), id);
        trail.add(by.act(
                "media.ordered",
                "leg",
                legName,
                "%d items, expected on %s".formatted(order.items(), order.expectedOn())));
        requests.ask(by.productionId(), Because.ORDER);
        return id;
    }

    /**
     * Records that items came.
     *
     * @param cameOn not before they were ordered
     * @param afterStep the last step the person has seen
     * @throws Refusal if more came than is left, or somebody else recorded a step meanwhile
     */
    @Transactional
    public void receive(Membership by, UUID orderId, int items, LocalDate cameOn, int afterStep) {
        MediaOrder order = get(by.productionId(), orderId);
        checkUnchanged(order, afterStep);
        if (items > order.left()) {
            throw new Refusal("forecast.refused.more-than-ordered", order.left());
        }
        addStep(by, order, "CAME", items, cameOn, null);
        trail.add(by.act(
                "media.came", "leg", order.legName(), "%d of %d items on %s".formatted(items, order.items(), cameOn)));
    }

    /**
     * Records that what hasn't come won't.
     *
     * @param afterStep the last step the person has seen
     * @throws Refusal if nothing is left, or somebody else recorded a step meanwhile
     */
    @Transactional
    public void cancel(Membership by, UUID orderId, int afterStep) {
        MediaOrder order = get(by.productionId(), orderId);
        checkUnchanged(order, afterStep);
        if (!order.isOpen()) {
            throw new Refusal("forecast.refused.nothing-left");
        }
        addStep(by, order, "CANCELLED", order.left(), null, null);
        trail.add(by.act(
                "media.order-cancelled",
                "leg",
                order.legName(),
                "%d of %d items".formatted(order.left(), order.items())));
    }

    /**
     * Takes back what was recorded by mistake; then it is as if it had never been, but stays on record.
     *
     * @param number of the step
     * @param afterStep the last step the person has seen
     * @throws NotFoundException if there is no such step that counts
     * @throws Refusal if somebody else recorded a step meanwhile
     */
    @Transactional
    public void takeBack(Membership by, UUID orderId, int number, int afterStep) {
        MediaOrder order = get(by.productionId(), orderId);
        checkUnchanged(order, afterStep);
        OrderStep step = steps(order).stream()
                .filter(one -> one.number() == number)
                .findFirst()
                .orElseThrow(NotFoundException::new);
        addStep(by, order, "TAKEN_BACK", step.items(), null, number);
        trail.add(by.act(
                "media.step-taken-back", "leg", order.legName(), "%s, %d items".formatted(step.step(), step.items())));
    }

    private static void checkUnchanged(MediaOrder order, int afterStep) {
        if (order.steps() != afterStep) {
            throw new Refusal("forecast.refused.order-changed");
        }
    }

    /** The step's number is taken once: of two people at once one is refused. */
    private void addStep(
            Membership by,
            MediaOrder order,
            String step,
            int items,
            @Nullable LocalDate cameOn,
            @Nullable Integer takenBackStep) {
        try {
            jdbc.sql("""
                            insert into forecast_order_step (order_id, number, at, by_id, step, items, came_on, taken_back_step)
                            values (:order, :number, :now, :by, :step, :items, :cameOn, :takenBack)
                            """)
                    .param("order", order.id())
                    .param("number", order.steps() + 1)
                    .param("now", Timestamp.from(clock.instant()))
                    .param("by", by.personId())
                    .param("step", step)
                    .param("items", items)
                    .param("cameOn", cameOn, Types.DATE)
                    .param("takenBack", takenBackStep, Types.INTEGER)
                    .update();
        } catch (DuplicateKeyException taken) {
            throw new Refusal("forecast.refused.order-changed");
        }
        requests.ask(by.productionId(), Because.ORDER);
    }
}
