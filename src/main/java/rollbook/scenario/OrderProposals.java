package rollbook.scenario;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;
import tools.jackson.databind.json.JsonMapper;

/** What is proposed to be ordered. */
@Service
public class OrderProposals {
    private static final String PROPOSALS = """
            select id, scenario_id, scenario_name, lines, cost_minor_units, needed_by, state, reason, proposed_at,
                   proposed_by_name, version
            from scenario_proposal where production_id = :production
            """;
    private static final String SUBJECT = "proposal";

    private final JdbcClient jdbc;
    private final Scenarios scenarios;
    private final ProposedOrders orders;
    private final AuditTrail trail;
    private final Clock clock;

    OrderProposals(JdbcClient jdbc, Scenarios scenarios, ProposedOrders orders, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.scenarios = scenarios;
        this.orders = orders;
        this.trail = trail;
        this.clock = clock;
    }

    /** The open ones first, the latest first. */
    List<OrderProposal> list(UUID productionId) {
        return jdbc.sql(PROPOSALS + " order by state <> 'PROPOSED', proposed_at desc, id")
                .param("production", productionId)
                .query(OrderProposals::read)
                .list();
    }

    private static OrderProposal read(ResultSet row, int number) throws SQLException {
        return new OrderProposal(
                row.getObject("id", UUID.class),
                row.getObject("scenario_id", UUID.class),
                row.getString("scenario_name"),
                Arrays.asList(JsonMapper.shared().readValue(row.getString("lines"), ProposalLine[].class)),
                row.getObject("cost_minor_units", Long.class),
                row.getObject("needed_by", LocalDate.class),
                OrderProposal.State.valueOf(row.getString("state")),
                row.getString("reason"),
                row.getTimestamp("proposed_at").toInstant(),
                row.getString("proposed_by_name"),
                row.getInt("version"));
    }

    /**
     * Proposes what a scenario adds to what the production owns, as it is saved.
     *
     * @throws Refusal if it adds nothing, or its proposal waits for an answer already
     */
    @Transactional
    public UUID propose(Membership by, UUID scenarioId) {
        Scenario scenario = scenarios.get(by.productionId(), scenarioId);
        List<ProposalLine> lines = ProposalLines.of(scenario.inputs(), Money.of(by.currency()));
        if (lines.isEmpty()) {
            throw new Refusal("scenario.refused.nothing-to-propose", scenario.name());
        }
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into scenario_proposal (id, production_id, scenario_id, scenario_name, lines,
                            cost_minor_units, needed_by, proposed_at, proposed_by, proposed_by_name)
                        values (:id, :production, :scenario, :name, cast(:lines as jsonb), :cost, :date, :now, :person,
                            :personName)
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("scenario", scenarioId)
                .param("name", scenario.name())
                .param("lines", JsonMapper.shared().writeValueAsString(lines))
                .param("cost", ProposalLines.cost(lines), Types.BIGINT)
                .param("date", Date.valueOf(scenario.inputs().facts().date()))
                .param("now", Timestamp.from(clock.instant()))
                .param("person", by.personId())
                .param("personName", by.personName())
                .update();
        if (added == 0) {
            throw new Refusal("scenario.refused.proposed-already", scenario.name());
        }
        trail.add(by.act("proposal.made", SUBJECT, scenario.name(), ""));
        return id;
    }

    /**
     * Makes orders of it, which wait for approval.
     *
     * @return the orders, at least one
     * @throws Refusal if somebody else answered it meanwhile
     */
    @Transactional
    public List<UUID> takeUp(Membership by, UUID id, int version) {
        return orders.propose(by, answer(by, id, version, OrderProposal.State.TAKEN_UP, ""));
    }

    /** @throws Refusal if somebody else answered it meanwhile */
    @Transactional
    public void withdraw(Membership by, UUID id, int version, String reason) {
        answer(by, id, version, OrderProposal.State.WITHDRAWN, reason);
    }

    private OrderProposal answer(Membership by, UUID id, int version, OrderProposal.State state, String reason) {
        OrderProposal proposal = jdbc.sql(PROPOSALS + " and id = :id")
                .param("production", by.productionId())
                .param("id", id)
                .query(OrderProposals::read)
                .optional()
                .orElseThrow(NotFoundException::new);
        int changed = jdbc.sql("""
                        update scenario_proposal set state = ?, reason = ?, version = version + 1
                        where production_id = ? and id = ? and version = ? and state = 'PROPOSED'
                        """)
                .params(state.name(), reason, by.productionId(), id, version)
                .update();
        if (changed == 0) {
            throw new Refusal("scenario.refused.answered-already", proposal.scenarioName());
        }
        trail.add(by.act(
                state == OrderProposal.State.TAKEN_UP ? "proposal.taken-up" : "proposal.withdrawn",
                SUBJECT,
                proposal.scenarioName(),
                reason));
        return proposal;
    }
}
