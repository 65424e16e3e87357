package rollbook.cost;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.web.Refusal;

/** The media budgets of productions; none is ever changed, a new one takes the place of the one before. */
@Service
public class Budgets {
    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final Clock clock;

    Budgets(JdbcClient jdbc, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
    }

    /** The newest, which counts, first. */
    List<Budget> of(UUID productionId) {
        return jdbc.sql("""
                        select b.number, b.minor_units, b.reason, b.at, p.display_name as by_name
                        from cost_budget b
                        join people_person p on p.id = b.by_id
                        where b.production_id = ? order by b.number desc
                        """).param(productionId).query(Budget.class).list();
    }

    /**
     * @param minorUnits in the smallest unit of the production's currency
     * @param afterBudget the number of the last budget the person has seen, zero for none
     * @throws Refusal if somebody else set one meanwhile
     */
    @Transactional
    public void set(Membership by, long minorUnits, String reason, int afterBudget) {
        try {
            int added = jdbc.sql("""
                            insert into cost_budget (production_id, number, minor_units, reason, at, by_id)
                            select :production, :number, :amount, :reason, :now, :by
                            where :number = 1 + (select count(*) from cost_budget where production_id = :production)
                            """)
                    .param("production", by.productionId())
                    .param("number", afterBudget + 1)
                    .param("amount", minorUnits)
                    .param("reason", reason)
                    .param("now", Timestamp.from(clock.instant()))
                    .param("by", by.personId())
                    .update();
            if (added == 0) {
                throw new Refusal("cost.refused.budget-changed");
            }
        } catch (DuplicateKeyException taken) {
            throw new Refusal("cost.refused.budget-changed");
        }
        String amount = Money.of(by.currency()).write(minorUnits);
        trail.add(by.act("budget.set", "budget", by.code(), "%s %s: %s".formatted(amount, by.currency(), reason)));
    }
}
