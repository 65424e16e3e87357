package rollbook.forecast;

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
    /** Leaves room for what a roll that stays whole can't use, and for the file system; common practice, no source. */
    private static final int USUAL_FILL_PERCENT = 95;

    private static final String SUPPLIES = """
            select leg_id, item_capacity_bytes, pack_size, lead_time_working_days, safety_working_days,
                   item_price_minor_units, version
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

    /** @param version -1 while the usual level holds */
    record FillLevel(int percent, int version) {}

    Map<UUID, LegSupply> byLeg(UUID productionId) {
        return jdbc.sql(SUPPLIES).param("production", productionId).query(LegSupply.class).list().stream()
                .collect(Collectors.toMap(LegSupply::legId, Function.identity()));
    }

    Optional<LegSupply> find(UUID productionId, UUID legId) {
        return jdbc.sql(SUPPLIES + " and leg_id = :leg")
                .param("production", productionId)
                .param("leg", legId)
                .query(LegSupply.class)
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
        int changed = jdbc.sql("""
                        insert into forecast_supply as s (leg_id, production_id, item_capacity_bytes, pack_size,
                            lead_time_working_days, safety_working_days, item_price_minor_units)
                        select :leg, :production, :capacity, :pack, :leadTime, :safety, :price
                        where :version = -1 or exists (select 1 from forecast_supply where leg_id = :leg)
                        on conflict (leg_id) do update set item_capacity_bytes = :capacity, pack_size = :pack,
                            lead_time_working_days = :leadTime, safety_working_days = :safety,
                            item_price_minor_units = :price, version = s.version + 1
                        where s.version = :version
                        """)
                .param("leg", supply.legId())
                .param("production", by.productionId())
                .param("capacity", supply.itemCapacityBytes())
                .param("pack", supply.packSize())
                .param("leadTime", supply.leadTimeWorkingDays())
                .param("safety", supply.safetyWorkingDays())
                .param("price", supply.itemPriceMinorUnits())
                .param("version", supply.version())
                .update();
        if (changed == 0) {
            throw new Refusal("forecast.refused.supply-changed", legName);
        }
        trail.add(by.act("supply.changed", "leg", legName, detail(supply)));
        requests.ask(by.productionId(), Because.SUPPLY);
    }

    FillLevel fillLevel(UUID productionId) {
        return jdbc.sql("select percent, version from forecast_fill_level where production_id = ?")
                .param(productionId)
                .query(FillLevel.class)
                .optional()
                .orElse(new FillLevel(USUAL_FILL_PERCENT, LegSupply.NOT_KEPT));
    }

    /** @throws Refusal if somebody else changed it meanwhile */
    @Transactional
    public void changeFillLevel(Membership by, FillLevel level) {
        int changed = jdbc.sql("""
                        insert into forecast_fill_level as f (production_id, percent) values (:production, :percent)
                        on conflict (production_id) do update set percent = :percent, version = f.version + 1
                        where f.version = :version
                        """)
                .param("production", by.productionId())
                .param("percent", level.percent())
                .param("version", level.version())
                .update();
        if (changed == 0) {
            throw new Refusal("forecast.refused.fill-level-changed");
        }
        trail.add(by.act("fill-level.changed", "production", by.code(), level.percent() + " %"));
        requests.ask(by.productionId(), Because.SUPPLY);
    }

    private static String detail(LegSupply supply) {
        return "%d B, pack %d, lead time %d, safety %d, price %d"
                .formatted(
                        supply.itemCapacityBytes(),
                        supply.packSize(),
                        supply.leadTimeWorkingDays(),
                        supply.safetyWorkingDays(),
                        supply.itemPriceMinorUnits());
    }
}
