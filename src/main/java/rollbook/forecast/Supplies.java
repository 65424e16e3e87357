package rollbook.forecast;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Time;
import java.sql.Types;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** Where more media comes from, for each leg, and how full items may get. */
@Service
public class Supplies {
    private static final String SUPPLIES = """
            select leg_id, item_capacity_bytes, pack_size, item_price_minor_units, supplier, lead_time_working_days,
                   slow_lead_time_working_days, country, order_cut_off, delivered_to, delivery_minor_units,
                   hire_week_minor_units, hire_minimum_weeks, version
            from forecast_supply where production_id = :production
            """;

    private final JdbcClient jdbc;
    private final CopyPlan plan;
    private final AuditTrail trail;
    private final ForecastRequests requests;

    Supplies(JdbcClient jdbc, CopyPlan plan, AuditTrail trail, ForecastRequests requests) {
        this.jdbc = jdbc;
        this.plan = plan;
        this.trail = trail;
        this.requests = requests;
    }

    Map<UUID, LegSupply> byLeg(UUID productionId) {
        return jdbc.sql(SUPPLIES).param("production", productionId).query(Supplies::supply).list().stream()
                .collect(Collectors.toMap(LegSupply::legId, Function.identity()));
    }

    Optional<LegSupply> find(UUID productionId, UUID legId) {
        return jdbc.sql(SUPPLIES + " and leg_id = :leg")
                .param("production", productionId)
                .param("leg", legId)
                .query(Supplies::supply)
                .optional();
    }

    /**
     * Says how more media for a leg can be had.
     *
     * @throws Refusal if somebody else said so meanwhile
     */
    @Transactional
    public void change(Membership by, LegSupply supply) {
        String legName = plan.leg(by.productionId(), supply.legId()).name();
        LegSupply.Source source = supply.source();
        LegSupply.HireTerms hire = supply.hire();
        int changed = jdbc.sql("""
                        insert into forecast_supply as s (leg_id, production_id, item_capacity_bytes, pack_size,
                            item_price_minor_units, supplier, lead_time_working_days, slow_lead_time_working_days,
                            country, order_cut_off, delivered_to, delivery_minor_units, hire_week_minor_units,
                            hire_minimum_weeks)
                        select :leg, :production, :capacity, :pack, :price, :supplier, :usual, :slow, :country, :cutOff,
                            :deliveredTo, :delivery, :hireWeek, :hireWeeks
                        where :version = -1 or exists (select 1 from forecast_supply where leg_id = :leg)
                        on conflict (leg_id) do update set item_capacity_bytes = excluded.item_capacity_bytes,
                            pack_size = excluded.pack_size, item_price_minor_units = excluded.item_price_minor_units,
                            supplier = excluded.supplier, lead_time_working_days = excluded.lead_time_working_days,
                            slow_lead_time_working_days = excluded.slow_lead_time_working_days,
                            country = excluded.country, order_cut_off = excluded.order_cut_off,
                            delivered_to = excluded.delivered_to,
                            delivery_minor_units = excluded.delivery_minor_units,
                            hire_week_minor_units = excluded.hire_week_minor_units,
                            hire_minimum_weeks = excluded.hire_minimum_weeks, version = s.version + 1
                        where s.version = :version
                        """)
                .param("leg", supply.legId())
                .param("production", by.productionId())
                .param("capacity", supply.itemCapacityBytes())
                .param("pack", supply.packSize())
                .param("price", supply.itemPriceMinorUnits())
                .param("supplier", source.name())
                .param("usual", source.leadTimeWorkingDays())
                .param("slow", source.slowLeadTimeWorkingDays())
                .param("country", source.country(), Types.VARCHAR)
                .param("cutOff", Time.valueOf(source.orderCutOff()))
                .param("deliveredTo", source.deliveredTo().name())
                .param("delivery", source.deliveryMinorUnits())
                .param("hireWeek", hire == null ? null : hire.weekMinorUnits(), Types.BIGINT)
                .param("hireWeeks", hire == null ? null : hire.minimumWeeks(), Types.INTEGER)
                .param("version", supply.version())
                .update();
        if (changed == 0) {
            throw new Refusal("forecast.refused.supply-changed", legName);
        }
        trail.add(by.act("supply.changed", "leg", legName, detail(supply)));
        requests.ask(by.productionId(), Because.SUPPLY);
    }

    Assumptions assumptions(UUID productionId) {
        return jdbc.sql("""
                        select fill_percent, service_level_percent, version from forecast_assumption
                        where production_id = ?
                        """)
                .param(productionId)
                .query(Assumptions.class)
                .optional()
                .orElse(Assumptions.USUAL);
    }

    /** @throws Refusal if somebody else changed them meanwhile */
    @Transactional
    void changeAssumptions(Membership by, Assumptions assumptions) {
        int changed = jdbc.sql("""
                        insert into forecast_assumption as a (production_id, fill_percent, service_level_percent)
                        values (:production, :fill, :service)
                        on conflict (production_id) do update set fill_percent = :fill,
                            service_level_percent = :service, version = a.version + 1
                        where a.version = :version
                        """)
                .param("production", by.productionId())
                .param("fill", assumptions.fillPercent())
                .param("service", assumptions.serviceLevelPercent())
                .param("version", assumptions.version())
                .update();
        if (changed == 0) {
            throw new Refusal("forecast.refused.assumptions-changed");
        }
        trail.add(by.act(
                "fill-level.changed",
                "production",
                by.code(),
                "fill level %d %%, service level %d %%"
                        .formatted(assumptions.fillPercent(), assumptions.serviceLevelPercent())));
        requests.ask(by.productionId(), Because.SUPPLY);
    }

    private static LegSupply supply(ResultSet row, int number) throws SQLException {
        Long hireWeek = row.getObject("hire_week_minor_units", Long.class);
        return new LegSupply(
                row.getObject("leg_id", UUID.class),
                row.getLong("item_capacity_bytes"),
                row.getInt("pack_size"),
                row.getLong("item_price_minor_units"),
                new LegSupply.Source(
                        row.getString("supplier"),
                        row.getInt("lead_time_working_days"),
                        row.getInt("slow_lead_time_working_days"),
                        row.getString("country"),
                        row.getTime("order_cut_off").toLocalTime(),
                        DeliveredTo.valueOf(row.getString("delivered_to")),
                        row.getLong("delivery_minor_units")),
                hireWeek == null ? null : new LegSupply.HireTerms(hireWeek, row.getInt("hire_minimum_weeks")),
                row.getInt("version"));
    }

    private static String detail(LegSupply supply) {
        LegSupply.Source source = supply.source();
        return "%d B, pack %d, lead time %d to %d, price %d"
                .formatted(
                        supply.itemCapacityBytes(),
                        supply.packSize(),
                        source.leadTimeWorkingDays(),
                        source.slowLeadTimeWorkingDays(),
                        supply.itemPriceMinorUnits());
    }
}
