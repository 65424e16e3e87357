package rollbook.verification;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.verification.ProofSummary.Alarm;
import rollbook.verification.ProofSummary.RollLine;

/** Looks over all rolls of a production at once, in a number of queries that does not grow with them. */
@Service
public class ProofSummaries {
    private static final Duration REJECTED_FOR = Duration.ofDays(1);

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final CopyPlan plan;
    private final RollBoard board;
    private final Clock clock;

    ProofSummaries(
            JdbcClient jdbc,
            Rolls rolls,
            Copies copies,
            Verdicts verdicts,
            CopyPlan plan,
            RollBoard board,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.plan = plan;
        this.board = board;
        this.clock = clock;
    }

    public ProofSummary of(UUID productionId) {
        ClearingRules rules = plan.rules(productionId);
        Map<UUID, CopyVerdict> judged = verdicts.all(productionId);
        List<Copy> allCopies = copies.list(productionId);
        Map<UUID, List<Copy>> byRoll = allCopies.stream().collect(Collectors.groupingBy(Copy::rollId));
        Map<RollStanding.State, List<RollLine>> lines = new EnumMap<>(RollStanding.State.class);
        List<Roll> all = rolls.list(productionId);
        for (Roll roll : all) {
            RollStanding standing =
                    RollStanding.of(roll, new Proof(rules, byRoll.getOrDefault(roll.id(), List.of()), judged));
            lines.computeIfAbsent(standing.state(), state -> new ArrayList<>())
                    .add(new RollLine(roll.id(), roll.code(), roll.cardCode(), board.says(standing)));
        }
        Attention attention = attention(productionId);
        return new ProofSummary(
                all.size(),
                lines.getOrDefault(RollStanding.State.READY, List.of()),
                lines.getOrDefault(RollStanding.State.CLEARED, List.of()),
                lines.getOrDefault(RollStanding.State.BAD_COPY, List.of()),
                lines.getOrDefault(RollStanding.State.HELD, List.of()),
                lines.getOrDefault(RollStanding.State.EXPOSED, List.of()),
                allCopies.size(),
                (int) judged.values().stream()
                        .filter(verdict -> verdict.verdict() == Verdict.PROVEN)
                        .count(),
                attention.unassigned(),
                attention.rejected(),
                attention.alarms());
    }

    private record Attention(int unassigned, int rejected, List<Alarm> alarms) {}

    /**
     * Documents and alarms that somebody must look after. Of alarms those whose copy is still not proven: one that was put
     * right needs nobody any more. One statement: the numbers stand beside each alarm, or alone if there is none.
     */
    private Attention attention(UUID productionId) {
        int[] documents = {0, 0};
        List<Alarm> alarms = new ArrayList<>();
        jdbc.sql("""
                        select documents.*, alarm.*
                        from (select (select count(distinct p.document_id) from verification_part p
                                       where p.production_id = :production
                                         and not exists (select 1 from verification_assignment a where a.part_id = p.id)) as unassigned,
                                     (select count(*) from verification_reading r
                                       where r.production_id = :production and r.state = 'REJECTED' and r.ended_at > :since) as rejected
                             ) documents
                        left join (
                          select distinct on (a.copy_id) a.roll_id, r.code as roll_code, i.code as item_code, a.card_erased
                          from verification_alarm a
                          join offload_roll r on r.id = a.roll_id
                          join offload_copy c on c.id = a.copy_id
                          join inventory_item i on i.id = c.item_id
                          where a.production_id = :production
                            and not exists (
                              select 1 from (select v.verdict, v.reasons from verification_verdict v where v.copy_id = a.copy_id
                                             order by v.id desc limit 1) newest
                              where newest.verdict = 'PROVEN'
                                and (c.rendition = 'AS_RECORDED' or 'ROUND_TRIP_PROVEN' = any (newest.reasons)))
                          order by a.copy_id, a.id desc) alarm on true
                        order by alarm.roll_code, alarm.item_code
                        """)
                .param("production", productionId)
                .param("since", Timestamp.from(clock.instant().minus(REJECTED_FOR)))
                .query(row -> {
                    documents[0] = row.getInt("unassigned");
                    documents[1] = row.getInt("rejected");
                    UUID rollId = row.getObject("roll_id", UUID.class);
                    if (rollId != null) {
                        alarms.add(new Alarm(
                                rollId,
                                row.getString("roll_code"),
                                row.getString("item_code"),
                                row.getBoolean("card_erased")));
                    }
                });
        return new Attention(documents[0], documents[1], List.copyOf(alarms));
    }
}
