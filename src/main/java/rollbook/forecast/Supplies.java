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
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueItem;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** What each leg's pool is filled up with, and how full items may get. */
@Service
public class Supplies {
    private static final String SUPPLIES = """
            select leg_id, catalogue_item_id as item_id, delivered_to, version
            from forecast_supply where production_id = :production
            """;

    private final JdbcClient jdbc;
    private final CopyPlan plan;
    private final Catalogue catalogue;
    private final AuditTrail trail;
    private final ForecastRequests requests;

    Supplies(JdbcClient jdbc, CopyPlan plan, Catalogue catalogue, AuditTrail trail, ForecastRequests requests) {
        this.jdbc = jdbc;
        this.plan = plan;
        this.catalogue = catalogue;
        this.trail = trail;
        this.requests = requests;
    }

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
     * Says what a leg's pool is filled up with.
     *
     * @throws NotFoundException if this production has no such leg or its suppliers offer no such item
     * @throws Refusal if somebody else said so meanwhile
     */
    @Transactional
    public void change(Membership by, LegSupply supply) {
        String legName = plan.leg(by.productionId(), supply.legId()).name();
        CatalogueItem item = catalogue.get(by.productionId(), supply.itemId());
        int changed = jdbc.sql("""
                        insert into forecast_supply as s (leg_id, production_id, catalogue_item_id, delivered_to)
                        select :leg, :production, :item, :deliveredTo
                        where :version = -1 or exists (select 1 from forecast_supply where leg_id = :leg)
                        on conflict (leg_id) do update set catalogue_item_id = excluded.catalogue_item_id,
                            delivered_to = excluded.delivered_to, version = s.version + 1
                        where s.version = :version
                        """)
                .param("leg", supply.legId())
                .param("production", by.productionId())
                .param("item", supply.itemId())
                .param("deliveredTo", supply.deliveredTo().name())
                .param("version", supply.version())
                .update();
        if (changed == 0) {
            throw new Refusal("forecast.refused.supply-changed", legName);
        }
        trail.add(by.act("supply.changed", "leg", legName, item.details().model()));
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
}
