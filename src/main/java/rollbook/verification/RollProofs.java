package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
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
import rollbook.production.MediaKind;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.ClearingGate.Hold;
import rollbook.verification.RollProof.CopyProof;
import rollbook.verification.RollProof.ProvingDocument;
import rollbook.web.Display;

/** What is proven of many rolls and by which documents, in four statements. */
@Service
public class RollProofs {
    private static final String NEWEST = """
            select newest.*, e.id as evidence_id, e.file_name as evidence_name, e.sha256 as evidence_sha256,
                   r.id as reference_id, r.file_name as reference_name, r.sha256 as reference_sha256
            from (%s order by v.copy_id, v.id desc) newest
            left join verification_part ep on ep.id = newest.evidence_part_id
            left join verification_document e on e.id = ep.document_id
            left join verification_part rp on rp.id = newest.reference_part_id
            left join verification_document r on r.id = rp.document_id
            """;

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final CopyPlan plan;
    private final RollBoard board;
    private final Display display;

    RollProofs(JdbcClient jdbc, Rolls rolls, Copies copies, CopyPlan plan, RollBoard board, Display display) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.plan = plan;
        this.board = board;
        this.display = display;
    }

    /**
     * @param copiesAsked how many proven copies the policy for cards asks for
     * @param legs of the copy plan, in its order
     * @param rolls by day and code
     */
    public record Proofs(int copiesAsked, List<Leg> legs, List<RollProof> rolls) {}

    public Proofs ofDay(UUID productionId, UUID dayId) {
        JdbcClient.StatementSpec newest = jdbc.sql(NEWEST.formatted(
                        Verdicts.NEWEST + "and v.roll_id in (select r.id from offload_roll r where r.day_id = :day)"))
                .param("production", productionId)
                .param("day", dayId);
        return proofs(
                plan.rules(productionId),
                rolls.ofDay(productionId, dayId),
                copies.ofDay(productionId, dayId),
                judged(newest));
    }

    public Proofs all(UUID productionId) {
        JdbcClient.StatementSpec newest =
                jdbc.sql(NEWEST.formatted(Verdicts.NEWEST)).param("production", productionId);
        return proofs(plan.rules(productionId), rolls.list(productionId), copies.list(productionId), judged(newest));
    }

    private record Judged(
            CopyVerdict verdict,
            @Nullable ProvingDocument evidence,
            @Nullable ProvingDocument reference) {}

    private static Map<UUID, Judged> judged(JdbcClient.StatementSpec newest) {
        Map<UUID, Judged> judged = new HashMap<>();
        newest.query((row, number) -> new Judged(
                        Verdicts.verdict(row, number), document(row, "evidence"), document(row, "reference")))
                .list()
                .forEach(one -> judged.put(one.verdict().copyId(), one));
        return judged;
    }

    private static @Nullable ProvingDocument document(ResultSet row, String role) throws SQLException {
        UUID id = row.getObject(role + "_id", UUID.class);
        return id == null
                ? null
                : new ProvingDocument(
                        id, row.getString(role + "_name"), HexFormat.of().formatHex(row.getBytes(role + "_sha256")));
    }

    private Proofs proofs(ClearingRules rules, List<Roll> all, List<Copy> allCopies, Map<UUID, Judged> judged) {
        Map<UUID, CopyVerdict> verdicts = new HashMap<>();
        judged.forEach((copyId, one) -> verdicts.put(copyId, one.verdict()));
        Map<UUID, List<Copy>> byRoll = allCopies.stream().collect(Collectors.groupingBy(Copy::rollId));
        List<RollProof> proofs = new ArrayList<>();
        for (Roll roll : all) {
            proofs.add(proof(roll, new Proof(rules, byRoll.getOrDefault(roll.id(), List.of()), verdicts), judged));
        }
        return new Proofs(rules.policy(MediaKind.CARD).provenCopies(), rules.legs(), proofs);
    }

    private RollProof proof(Roll roll, Proof proof, Map<UUID, Judged> judged) {
        RollStanding standing = RollStanding.of(roll, proof);
        return new RollProof(
                roll,
                standing.state(),
                board.says(standing),
                standing.holds().stream().map(board::says).toList(),
                standing.holds().stream().map(Hold::onRecord).toList(),
                (int) proof.states().stream().filter(CopyState::isProven).count(),
                proof.copies().stream()
                        .map(copy -> copyProof(copy, judged.get(copy.id())))
                        .toList());
    }

    private CopyProof copyProof(Copy copy, @Nullable Judged judged) {
        if (judged == null) {
            return new CopyProof(copy, Verdict.UNKNOWN, "", List.of(), List.of(), null, null, null, null);
        }
        CopyVerdict verdict = judged.verdict();
        return new CopyProof(
                copy,
                verdict.verdict(),
                board.note(verdict),
                verdict.reasons(),
                ReasonKeys.texts(display, verdict),
                verdict.judgedAt(),
                verdict.checkedAt(),
                judged.evidence(),
                judged.reference());
    }
}
