package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What a roll's page tells besides its copies, read in one statement: the numbers stand beside each clearance. */
@Repository
class RollFacts {
    private final JdbcClient jdbc;
    private final Clock clock;

    RollFacts(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * @param waiting the request to clear the card without proof that waits for a second person
     * @param clearances newest first
     */
    record Facts(Habits habits, @Nullable Waiting waiting, List<Clearance> clearances) {

        /** The clearance without proof that led to an erasure, or still may. */
        @Nullable
        Clearance withoutProof() {
            return clearances.stream()
                    .filter(Clearance::withoutProof)
                    .filter(clearance -> clearance.withdrawnAt() == null)
                    .findFirst()
                    .orElse(null);
        }
    }

    record Waiting(UUID requestId, String askedByName, Instant askedAt) {}

    Facts of(UUID productionId, UUID rollId) {
        List<Facts> one = new ArrayList<>();
        List<Clearance> clearances = new ArrayList<>();
        jdbc.sql("""
                        select production.virus_checked, production.write_blocked, recheck.drive_days, recheck.array_days,
                               recheck.tape_days, waiting.request_id, waiting.requester_name, waiting.requested_at, clearance.*
                        from production_production production
                        left join verification_recheck_plan recheck on recheck.production_id = production.id
                        left join lateral (
                          select q.id as request_id, q.requested_at, p.display_name as requester_name
                          from verification_override_request q join people_person p on p.id = q.requested_by
                          where q.roll_id = :roll and q.requested_at > :since
                            and not exists (select 1 from verification_override_approval a where a.request_id = q.id)
                            and not exists (select 1 from verification_override_withdrawal w where w.request_id = q.id)
                          order by q.requested_at desc limit 1) waiting on true
                        left join (%s) clearance on true
                        where production.id = :production order by clearance.cleared_at desc, clearance.id
                        """.formatted(Clearances.CLEARANCES))
                .param("production", productionId)
                .param("roll", rollId)
                .param("since", Timestamp.from(clock.instant().minus(Overrides.OPEN_FOR)))
                .query(row -> {
                    if (row.getObject("id") != null) {
                        clearances.add(Clearances.clearance(row, 0));
                    }
                    one.add(new Facts(habits(row), waiting(row), clearances));
                });
        return one.get(0);
    }

    private static Habits habits(ResultSet row) throws SQLException {
        return new Habits(
                row.getBoolean("virus_checked"),
                row.getBoolean("write_blocked"),
                new RecheckPlan(
                        row.getObject("drive_days", Integer.class),
                        row.getObject("array_days", Integer.class),
                        row.getObject("tape_days", Integer.class),
                        0));
    }

    private static @Nullable Waiting waiting(ResultSet row) throws SQLException {
        UUID requestId = row.getObject("request_id", UUID.class);
        return requestId == null
                ? null
                : new Waiting(
                        requestId,
                        row.getString("requester_name"),
                        row.getTimestamp("requested_at").toInstant());
    }
}
