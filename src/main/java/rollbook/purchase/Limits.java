package rollbook.purchase;

import java.sql.Types;
import java.util.Objects;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** Keeps up to which amount whom orders are approved by. */
@Service
class Limits {
    private final JdbcClient jdbc;
    private final AuditTrail trail;

    Limits(JdbcClient jdbc, AuditTrail trail) {
        this.jdbc = jdbc;
        this.trail = trail;
    }

    ApprovalLimits of(UUID productionId) {
        return jdbc.sql("""
                        select office_minor_units, wrangler_minor_units, post_minor_units, version
                        from purchase_limit where production_id = ?
                        """)
                .param(productionId)
                .query(ApprovalLimits.class)
                .optional()
                .orElse(ApprovalLimits.USUAL);
    }

    /** @throws Refusal if somebody else changed them meanwhile */
    @Transactional
    public void change(Membership by, ApprovalLimits limits) {
        int changed = jdbc.sql("""
                        insert into purchase_limit as l (production_id, office_minor_units, wrangler_minor_units, post_minor_units)
                        select :production, :office, :wrangler, :post
                        where :version = -1 or exists (select 1 from purchase_limit where production_id = :production)
                        on conflict (production_id) do update set office_minor_units = excluded.office_minor_units,
                            wrangler_minor_units = excluded.wrangler_minor_units,
                            post_minor_units = excluded.post_minor_units, version = l.version + 1
                        where l.version = :version
                        """)
                .param("production", by.productionId())
                .param("office", limits.officeMinorUnits(), Types.BIGINT)
                .param("wrangler", limits.wranglerMinorUnits(), Types.BIGINT)
                .param("post", limits.postMinorUnits(), Types.BIGINT)
                .param("version", limits.version())
                .update();
        if (changed == 0) {
            throw new Refusal("purchase.refused.limits-changed");
        }
        trail.add(by.act(
                "order-limits.changed",
                "production",
                by.code(),
                "office %s, wranglers %s, post %s"
                        .formatted(
                                Objects.toString(limits.officeMinorUnits(), "any"),
                                Objects.toString(limits.wranglerMinorUnits(), "any"),
                                Objects.toString(limits.postMinorUnits(), "any"))));
    }
}
