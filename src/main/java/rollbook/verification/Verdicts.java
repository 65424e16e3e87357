package rollbook.verification;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.manifest.FileFinding;
import rollbook.manifest.ManifestComparison;
import rollbook.manifest.Verdict;

/** The verdicts on copies, appended and never changed. The newest one of a copy holds. */
@Repository
class Verdicts {
    static final int DIFFERENCES_KEPT = ManifestComparison.FINDINGS_KEPT;

    private static final int BATCH = 1_000;
    private static final String VERDICT = """
            v.*, (select least(d.uploaded_at, g.created_on) from verification_part p
                  join verification_document d on d.id = p.document_id
                  join verification_reading g on g.document_id = d.id
                  where p.id = v.evidence_part_id) as checked_at
            from verification_verdict v
            """;
    static final String NEWEST = "select distinct on (v.copy_id) " + VERDICT
            + " where v.production_id = :production and v.copy_id is not null ";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    Verdicts(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** The newest verdict of each copy of a roll, by copy. Copies nobody has judged are missing. */
    Map<UUID, CopyVerdict> ofRoll(UUID productionId, UUID rollId) {
        return byCopy(jdbc.sql(NEWEST + "and v.roll_id = :roll order by v.copy_id, v.id desc")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Verdicts::verdict)
                .list());
    }

    Map<UUID, CopyVerdict> ofDay(UUID productionId, UUID dayId) {
        return byCopy(jdbc.sql(NEWEST + """
                        and v.roll_id in (select r.id from offload_roll r where r.day_id = :day)
                        order by v.copy_id, v.id desc
                        """)
                .param("production", productionId)
                .param("day", dayId)
                .query(Verdicts::verdict)
                .list());
    }

    /** Of the rolls that have a copy on the item, which isn't erased. */
    Map<UUID, CopyVerdict> ofRollsOn(UUID productionId, UUID itemId) {
        return byCopy(jdbc.sql(NEWEST + """
                        and v.roll_id in (select c.roll_id from offload_copy c where c.item_id = :item and c.erased_at is null)
                        order by v.copy_id, v.id desc
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query(Verdicts::verdict)
                .list());
    }

    Map<UUID, CopyVerdict> all(UUID productionId) {
        return byCopy(jdbc.sql(NEWEST + "order by v.copy_id, v.id desc")
                .param("production", productionId)
                .query(Verdicts::verdict)
                .list());
    }

    /** Every verdict on the copies of a roll and on its decoded files, newest first. */
    List<CopyVerdict> history(UUID productionId, UUID rollId) {
        return jdbc.sql("select " + VERDICT + " where v.production_id = ? and v.roll_id = ? order by v.id desc")
                .params(productionId, rollId)
                .query(Verdicts::verdict)
                .list();
    }

    /** The newest verdict on the roll's decoded files. */
    Optional<CopyVerdict> newestOfDecoded(UUID productionId, UUID rollId) {
        return jdbc.sql("""
                        select %s where v.production_id = ? and v.roll_id = ? and v.copy_id is null order by v.id desc limit 1
                        """.formatted(VERDICT))
                .params(productionId, rollId)
                .query(Verdicts::verdict)
                .optional();
    }

    Optional<CopyVerdict> newest(UUID productionId, UUID copyId) {
        return jdbc.sql("select " + VERDICT + " where v.production_id = ? and v.copy_id = ? order by v.id desc limit 1")
                .params(productionId, copyId)
                .query(Verdicts::verdict)
                .optional();
    }

    /** Puts a verdict on record with the files that are not the same. */
    @Transactional(propagation = Propagation.MANDATORY)
    long append(UUID productionId, UUID rollId, CopyVerdict verdict, List<FileFinding> findings) {
        CopyVerdict.Counts counts = verdict.counts();
        long id = jdbc.sql("""
                        insert into verification_verdict (production_id, copy_id, roll_id, verdict, reasons, reference_part_id,
                            evidence_part_id, same, different, missing, extra, moved, size_only, name_only, listed_twice,
                            spelled_otherwise, judged_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) returning id
                        """)
                .param(productionId)
                .param(verdict.copyId())
                .param(rollId)
                .param(verdict.verdict().name())
                .param(verdict.reasons().toArray(String[]::new))
                .param(verdict.referencePartId())
                .param(verdict.evidencePartId())
                .param(counts.same())
                .param(counts.different())
                .param(counts.missing())
                .param(counts.extra())
                .param(counts.moved())
                .param(counts.sizeOnly())
                .param(counts.nameOnly())
                .param(counts.listedTwice())
                .param(counts.spelledOtherwise())
                .param(Timestamp.from(verdict.judgedAt()))
                .query(Long.class)
                .single();
        int[] position = {0};
        batches.batchUpdate("""
                insert into verification_difference (verdict_id, position, kind, path, expected, found, other_path)
                values (?, ?, ?, ?, ?, ?, ?)
                """, findings, BATCH, (row, finding) -> set(row, id, position[0]++, finding));
        return id;
    }

    private static void set(PreparedStatement row, long verdictId, int position, FileFinding finding)
            throws SQLException {
        row.setLong(1, verdictId);
        row.setInt(2, position);
        row.setString(3, finding.kind().name());
        row.setString(4, finding.path());
        row.setString(5, facts(finding.expected()));
        row.setString(6, facts(finding.found()));
        row.setString(7, finding.otherPath());
    }

    private static String facts(FileFinding.@Nullable Facts facts) {
        if (facts == null) {
            return "";
        }
        return facts.sizeBytes() == null ? facts.checksums() : facts.sizeBytes() + " B  " + facts.checksums();
    }

    List<Difference> differences(UUID productionId, long verdictId) {
        return jdbc.sql("""
                        select d.kind, d.path, d.expected, d.found, d.other_path
                        from verification_difference d join verification_verdict v on v.id = d.verdict_id
                        where v.production_id = ? and d.verdict_id = ? order by d.position
                        """)
                .params(productionId, verdictId)
                .query(Difference.class)
                .list();
    }

    /** The differences of several verdicts, by verdict; at most so many of each. */
    Map<Long, List<Difference>> differences(UUID productionId, List<Long> verdictIds, int most) {
        Map<Long, List<Difference>> byVerdict = new LinkedHashMap<>();
        if (verdictIds.isEmpty()) {
            return byVerdict;
        }
        jdbc.sql("""
                        select d.verdict_id, d.kind, d.path, d.expected, d.found, d.other_path
                        from verification_difference d join verification_verdict v on v.id = d.verdict_id
                        where v.production_id = :production and d.verdict_id in (:verdicts) and d.position < :most
                        order by d.verdict_id, d.position
                        """)
                .param("production", productionId)
                .param("verdicts", verdictIds)
                .param("most", most)
                .query(row -> {
                    byVerdict
                            .computeIfAbsent(row.getLong("verdict_id"), id -> new java.util.ArrayList<>())
                            .add(new Difference(
                                    FileFinding.Kind.valueOf(row.getString("kind")),
                                    row.getString("path"),
                                    row.getString("expected"),
                                    row.getString("found"),
                                    row.getString("other_path")));
                });
        return byVerdict;
    }

    record Difference(
            FileFinding.Kind kind,
            String path,
            String expected,
            String found,
            @Nullable String otherPath) {}

    private static Map<UUID, CopyVerdict> byCopy(List<CopyVerdict> verdicts) {
        Map<UUID, CopyVerdict> byCopy = new LinkedHashMap<>();
        verdicts.forEach(verdict -> byCopy.put(verdict.copyId(), verdict));
        return byCopy;
    }

    static CopyVerdict verdict(ResultSet row, int number) throws SQLException {
        return new CopyVerdict(
                row.getLong("id"),
                row.getObject("copy_id", UUID.class),
                Verdict.valueOf(row.getString("verdict")),
                List.of((String[]) row.getArray("reasons").getArray()),
                row.getObject("reference_part_id", UUID.class),
                row.getObject("evidence_part_id", UUID.class),
                new CopyVerdict.Counts(
                        row.getLong("same"),
                        row.getLong("different"),
                        row.getLong("missing"),
                        row.getLong("extra"),
                        row.getLong("moved"),
                        row.getLong("size_only"),
                        row.getLong("name_only"),
                        row.getLong("listed_twice"),
                        row.getLong("spelled_otherwise")),
                row.getTimestamp("judged_at").toInstant(),
                row.getTimestamp("checked_at") == null
                        ? null
                        : row.getTimestamp("checked_at").toInstant());
    }
}
