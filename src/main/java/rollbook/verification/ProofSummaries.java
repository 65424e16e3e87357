package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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
import rollbook.production.Leg;
import rollbook.verification.ProofSummary.Alarm;
import rollbook.verification.ProofSummary.Medium;
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
        Map<CardStanding, List<RollLine>> lines = new EnumMap<>(CardStanding.class);
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
                lines.getOrDefault(CardStanding.READY, List.of()),
                lines.getOrDefault(CardStanding.CLEARED, List.of()),
                lines.getOrDefault(CardStanding.BAD_COPY, List.of()),
                lines.getOrDefault(CardStanding.HELD, List.of()),
                lines.getOrDefault(CardStanding.EXPOSED, List.of()),
                lines.getOrDefault(CardStanding.COPYING, List.of()),
                all.stream().collect(Collectors.groupingBy(Roll::dayId, Collectors.counting())),
                allCopies.size(),
                (int) judged.values().stream()
                        .filter(verdict -> verdict.verdict() == Verdict.PROVEN)
                        .count(),
                attention.unassigned(),
                attention.rejected(),
                attention.alarms(),
                attention.asked(),
                attention.withoutProof(),
                media(rules, all, allCopies, judged, attention.cleared()));
    }

    /** The media of legs that come back into use, as far as they may be cleared or erased. */
    private static List<Medium> media(
            ClearingRules rules,
            List<Roll> all,
            List<Copy> allCopies,
            Map<UUID, CopyVerdict> judged,
            Set<UUID> cleared) {
        Set<UUID> returning = rules.legs().stream()
                .filter(leg -> leg.returnsAfterDays() != null)
                .map(Leg::id)
                .collect(Collectors.toSet());
        Map<UUID, String> codes = new TreeMap<>();
        allCopies.stream()
                .filter(copy -> !copy.isErased())
                .filter(copy -> returning.contains(copy.legId()) || cleared.contains(copy.itemId()))
                .forEach(copy -> codes.put(copy.itemId(), copy.itemCode()));
        Map<UUID, MediumProof> proofs = MediumProof.ofAll(rules, all, allCopies, judged);
        return codes.entrySet().stream()
                .filter(item -> cleared.contains(item.getKey())
                        || proofs.get(item.getKey()).mayBeCleared())
                .map(item -> new Medium(item.getKey(), item.getValue(), cleared.contains(item.getKey())))
                .sorted(Comparator.comparing(Medium::itemCode))
                .toList();
    }

    private record Attention(
            int unassigned,
            int rejected,
            List<Alarm> alarms,
            List<ProofSummary.Override> asked,
            List<ProofSummary.Override> withoutProof,
            Set<UUID> cleared) {}

    /**
     * Documents, alarms, overrides and cleared media that somebody must look after. Of alarms those whose copy is still
     * not proven: one that was put right needs nobody any more. One statement: the numbers stand beside each of the
     * others, or alone if there is none.
     */
    private Attention attention(UUID productionId) {
        int[] documents = {0, 0};
        Attention attention =
                new Attention(0, 0, new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new HashSet<>());
        Instant now = clock.instant();
        jdbc.sql("""
                        select documents.*, matter.*
                        from (select (select count(distinct p.document_id) from verification_part p
                                       where p.production_id = :production
                                         and not exists (select 1 from verification_assignment a where a.part_id = p.id)) as unassigned,
                                     (select count(*) from verification_reading r
                                       where r.production_id = :production and r.state = 'REJECTED' and r.ended_at > :since) as rejected
                             ) documents
                        left join (
                          (select distinct on (a.copy_id) 'ALARM' as what, a.roll_id as id, null::uuid as roll_id, r.code as roll_code,
                                 i.code as item_code, a.card_erased, null as asked_by, null as approved_by
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
                           order by a.copy_id, a.id desc)
                          union all
                          select 'OVERRIDE', q.id, q.roll_id, r.code, i.code, false, asked.display_name, approved.display_name
                          from verification_override_request q
                          join offload_roll r on r.id = q.roll_id
                          join inventory_item i on i.id = q.card_id
                          join people_person asked on asked.id = q.requested_by
                          left join verification_override_approval a on a.request_id = q.id
                          left join people_person approved on approved.id = a.approved_by
                          where q.production_id = :production and (a.request_id is not null or q.requested_at > :open)
                            and not exists (select 1 from verification_override_withdrawal w where w.request_id = q.id)
                          union all
                          select 'CLEARED', c.item_id, null, '', '', false, null, null
                          from verification_medium_clearance c where c.production_id = :production
                            and not exists (select 1 from verification_medium_withdrawal w where w.clearance_id = c.id)
                            and not exists (select 1 from verification_medium_erasure e where e.clearance_id = c.id)
                        ) matter on true
                        order by matter.roll_code, matter.item_code
                        """)
                .param("production", productionId)
                .param("since", Timestamp.from(now.minus(REJECTED_FOR)))
                .param("open", Timestamp.from(now.minus(Overrides.OPEN_FOR)))
                .query(row -> {
                    documents[0] = row.getInt("unassigned");
                    documents[1] = row.getInt("rejected");
                    if (row.getString("what") != null) {
                        add(row, attention);
                    }
                });
        return new Attention(
                documents[0],
                documents[1],
                attention.alarms(),
                attention.asked(),
                attention.withoutProof(),
                attention.cleared());
    }

    private static void add(ResultSet row, Attention attention) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        switch (row.getString("what")) {
            case "ALARM" ->
                attention
                        .alarms()
                        .add(new Alarm(
                                id,
                                row.getString("roll_code"),
                                row.getString("item_code"),
                                row.getBoolean("card_erased")));
            case "CLEARED" -> attention.cleared().add(id);
            default -> {
                ProofSummary.Override override = new ProofSummary.Override(
                        id,
                        row.getObject("roll_id", UUID.class),
                        row.getString("roll_code"),
                        row.getString("item_code"),
                        row.getString("asked_by"),
                        row.getString("approved_by"));
                (override.approvedByName() == null ? attention.asked() : attention.withoutProof()).add(override);
            }
        }
    }
}
