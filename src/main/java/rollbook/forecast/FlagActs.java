package rollbook.forecast;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.ordering.Flag;
import rollbook.ordering.FlagRule;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.purchase.OrderPlaced;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * The flags that say that a pool needs an order: what forecasts and people do with them. Whoever changes a flag locks it
 * first, and the production's forecast state after it.
 */
@Service
public class FlagActs {
    private final JdbcClient jdbc;
    private final CopyPlan plan;
    private final AuditTrail trail;
    private final Clock clock;

    FlagActs(JdbcClient jdbc, CopyPlan plan, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.plan = plan;
        this.trail = trail;
        this.clock = clock;
    }

    /** Each pool's newest flag, open or closed, by its leg. */
    Map<UUID, PoolFlag> newestByLeg(UUID productionId) {
        Map<UUID, PoolFlag> flags = new LinkedHashMap<>();
        read(productionId, null).forEach(flag -> flags.put(flag.legId(), flag));
        return flags;
    }

    /** @throws NotFoundException if this production has no such flag */
    PoolFlag get(UUID productionId, UUID flagId) {
        return read(productionId, flagId).stream().findFirst().orElseThrow(NotFoundException::new);
    }

    /** Oldest first. */
    private List<PoolFlag> read(UUID productionId, @Nullable UUID flagId) {
        Map<UUID, PoolFlag> flags = new LinkedHashMap<>();
        jdbc.sql("""
                        select f.id, f.leg_id, f.opened_on, f.calm_since, a.number, a.at, a.act, a.by_name, a.reason, a.until
                        from forecast_flag f join forecast_flag_act a on a.flag_id = f.id
                        where f.production_id = :production and (cast(:flag as uuid) is null or f.id = :flag)
                        order by f.sequence, a.number
                        """)
                .param("production", productionId)
                .param("flag", flagId, Types.OTHER)
                .query(row -> {
                    UUID id = row.getObject("id", UUID.class);
                    PoolFlag before = flags.get(id);
                    List<PoolFlag.Act> acts = new ArrayList<>(before == null ? List.of() : before.acts());
                    acts.add(act(row));
                    flags.put(
                            id,
                            new PoolFlag(
                                    id,
                                    row.getObject("leg_id", UUID.class),
                                    row.getObject("opened_on", LocalDate.class),
                                    row.getObject("calm_since", LocalDate.class),
                                    acts));
                });
        return List.copyOf(flags.values());
    }

    private static PoolFlag.Act act(ResultSet row) throws SQLException {
        return new PoolFlag.Act(
                row.getInt("number"),
                row.getTimestamp("at").toInstant(),
                PoolFlag.Kind.valueOf(row.getString("act")),
                row.getString("by_name"),
                row.getString("reason"),
                row.getObject("until", LocalDate.class));
    }

    /**
     * Somebody sees to it.
     *
     * @param afterAct the last act the person has seen
     * @return the name of the leg whose pool it is about
     * @throws Refusal if it is closed, or something happened to it meanwhile
     */
    @Transactional
    public String acknowledge(Membership by, UUID flagId, int afterAct) {
        return change(by, flagId, afterAct, PoolFlag.Kind.ACKNOWLEDGED, "flag.acknowledged", "", null);
    }

    /**
     * Nobody has to see to it until a date.
     *
     * @param afterAct the last act the person has seen
     * @return the name of the leg whose pool it is about
     * @throws Refusal if it is closed, or something happened to it meanwhile
     */
    @Transactional
    public String snooze(Membership by, UUID flagId, String reason, LocalDate until, int afterAct) {
        return change(by, flagId, afterAct, PoolFlag.Kind.SNOOZED, "flag.snoozed", reason, until);
    }

    /**
     * Takes back that it was acknowledged or snoozed.
     *
     * @param afterAct the last act the person has seen
     * @return the name of the leg whose pool it is about
     * @throws Refusal if it is closed, or something happened to it meanwhile
     */
    @Transactional
    public String reopen(Membership by, UUID flagId, int afterAct) {
        return change(by, flagId, afterAct, PoolFlag.Kind.REOPENED, "flag.reopened", "", null);
    }

    private String change(
            Membership by,
            UUID flagId,
            int afterAct,
            PoolFlag.Kind kind,
            String action,
            String reason,
            @Nullable LocalDate until) {
        lock(by.productionId());
        PoolFlag flag = get(by.productionId(), flagId);
        String legName = plan.leg(by.productionId(), flag.legId()).name();
        if (flag.last().number() != afterAct || !flag.isOpen() || flag.last().kind() == kind) {
            throw new Refusal("forecast.refused.flag-changed", legName);
        }
        add(flag, kind, by, reason, until, null, null);
        trail.add(by.act(action, "leg", legName, until == null ? reason : "until %s: %s".formatted(until, reason)));
        return legName;
    }

    /** Closes the flags of the pools that the order fills up, where they have an open one. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void on(OrderPlaced order) {
        Membership by = order.by();
        lock(by.productionId());
        newestByLeg(by.productionId()).values().stream()
                .filter(flag -> flag.isOpen() && order.legIds().contains(flag.legId()))
                .forEach(flag -> add(flag, PoolFlag.Kind.CLOSED_BY_ORDER, by, "", null, null, order.orderId()));
    }

    /** Keeps others from changing the production's flags until the transaction ends. */
    @Transactional(propagation = Propagation.MANDATORY)
    void lock(UUID productionId) {
        jdbc.sql("select id from forecast_flag where production_id = ? order by sequence for update")
                .param(productionId)
                .query(UUID.class)
                .list();
    }

    /** Opens, wakes and closes flags as the rule says; the caller has locked them. */
    @Transactional(propagation = Propagation.MANDATORY)
    void follow(UUID productionId, long runId, StorageForecast forecast) {
        Map<UUID, PoolFlag> flags = newestByLeg(productionId);
        for (LegForecast leg : forecast.legs()) {
            if (leg.advice() != null) {
                PoolFlag before = flags.get(leg.legId());
                Flag after = FlagRule.after(
                        before == null ? null : before.flag(), FlagRule.Sighting.of(leg.advice(), forecast.today()));
                follow(productionId, leg.legId(), runId, before, after);
            }
        }
    }

    private void follow(UUID productionId, UUID legId, long runId, @Nullable PoolFlag before, @Nullable Flag after) {
        if (after == null) {
            return;
        }
        boolean isNew = before == null || !before.isOpen();
        if (isNew && !after.state().isClosed()) {
            PoolFlag opened = new PoolFlag(UUID.randomUUID(), legId, after.openedOn(), null, List.of());
            jdbc.sql("insert into forecast_flag (id, production_id, leg_id, opened_on) values (?, ?, ?, ?)")
                    .params(opened.id(), productionId, legId, Date.valueOf(after.openedOn()))
                    .update();
            add(opened, PoolFlag.Kind.OPENED, null, "", null, runId, null);
        } else if (!isNew) {
            if (after.state() == Flag.State.CLOSED_BY_FORECAST) {
                add(before, PoolFlag.Kind.CLOSED_BY_FORECAST, null, "", null, runId, null);
            } else if (before.state() != after.state()) {
                add(before, PoolFlag.Kind.WOKEN, null, "", null, runId, null);
            }
            jdbc.sql(
                            "update forecast_flag set calm_since = :calm where id = :flag and calm_since is distinct from :calm")
                    .param("calm", after.calmSince() == null ? null : Date.valueOf(after.calmSince()), Types.DATE)
                    .param("flag", before.id())
                    .update();
        }
    }

    private void add(
            PoolFlag flag,
            PoolFlag.Kind kind,
            @Nullable Membership by,
            String reason,
            @Nullable LocalDate until,
            @Nullable Long runId,
            @Nullable UUID orderId) {
        jdbc.sql("""
                        insert into forecast_flag_act (flag_id, number, at, act, by_id, by_name, run_id, order_id, reason, until)
                        values (:flag, :number, :at, :act, :by, :name, :run, :order, :reason, :until)
                        """)
                .param("flag", flag.id())
                .param("number", flag.acts().size() + 1)
                .param("at", Timestamp.from(clock.instant()))
                .param("act", kind.name())
                .param("by", by == null ? null : by.personId(), Types.OTHER)
                .param("name", by == null ? "" : by.personName())
                .param("run", runId, Types.BIGINT)
                .param("order", orderId, Types.OTHER)
                .param("reason", reason)
                .param("until", until == null ? null : Date.valueOf(until), Types.DATE)
                .update();
    }
}
