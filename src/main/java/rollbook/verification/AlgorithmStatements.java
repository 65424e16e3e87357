package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.manifest.DocumentHints;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Which algorithm a document's digests are of where it doesn't say so itself: what people said, and what its empty
 * files showed.
 */
@Service
class AlgorithmStatements {
    /** The newest of each document and length. */
    private static final String NEWEST = """
            select distinct on (s.document_id, s.digits) s.document_id, s.digits, s.algorithm, e.display_name
            from verification_algorithm_statement s join people_person e on e.id = s.said_by
            where s.document_id in (:documents)
            order by s.document_id, s.digits, s.id desc
            """;

    private final JdbcClient jdbc;
    private final SchedulerClient jobs;
    private final AuditTrail trail;
    private final Clock clock;

    AlgorithmStatements(JdbcClient jdbc, SchedulerClient jobs, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.jobs = jobs;
        this.trail = trail;
        this.clock = clock;
    }

    /** With what a document is to be read once more. */
    DocumentHints hints(UUID documentId, String fileName) {
        Set<ChecksumAlgorithm> said = jdbc
                .sql("select algorithm from (" + NEWEST + ") newest where algorithm is not null")
                .param("documents", List.of(documentId))
                .query(String.class)
                .list()
                .stream()
                .map(ChecksumAlgorithm::valueOf)
                .collect(Collectors.toSet());
        Set<ChecksumAlgorithm> shown = jdbc.sql(
                        "select empty_file_algorithms from verification_reading where document_id = ?")
                .param(documentId)
                .query((row, number) -> algorithms(row.getArray("empty_file_algorithms")))
                .single();
        boolean plainPercents = jdbc.sql(
                        "select exists (select 1 from verification_archive_member where member_id = ? and plain_percents)")
                .param(documentId)
                .query(Boolean.class)
                .single();
        return new DocumentHints(fileName, said, shown, plainPercents);
    }

    private static Set<ChecksumAlgorithm> algorithms(Array names) throws SQLException {
        return Stream.of((String[]) names.getArray())
                .map(ChecksumAlgorithm::valueOf)
                .collect(Collectors.toSet());
    }

    /**
     * What a verdict from these documents has to say of their algorithms.
     *
     * @param sayers the people who said which algorithm some digests are of
     * @param open whether of some digests nobody did
     */
    record Grounds(List<String> sayers, boolean open) {}

    Grounds grounds(Collection<UUID> documentIds) {
        List<String> sayers = jdbc.sql("select distinct display_name from (" + NEWEST
                        + ") newest where algorithm is not null order by display_name")
                .param("documents", documentIds)
                .query(String.class)
                .list();
        boolean open = jdbc.sql(
                        "select exists (select 1 from verification_reading r, unnest(r.ambiguous_digits) as asked (digits)"
                                + " where r.document_id in (:documents) and not exists (select 1 from (" + NEWEST
                                + ") s where s.document_id = r.document_id and s.digits = asked.digits and s.algorithm is not null))")
                .param("documents", documentIds)
                .query(Boolean.class)
                .single();
        return new Grounds(sayers, open);
    }

    /** What is to be asked of a document, or was. */
    List<AlgorithmQuestion> questions(Document document) {
        if (document.ambiguousDigits().isEmpty()) {
            return List.of();
        }
        List<AlgorithmQuestion.Statement> statements = jdbc.sql("""
                        select s.id, s.digits, s.algorithm, s.said_at, e.display_name
                        from verification_algorithm_statement s join people_person e on e.id = s.said_by
                        where s.document_id = ? order by s.id desc
                        """)
                .param(document.id())
                .query(AlgorithmStatements::statement)
                .list();
        return document.ambiguousDigits().stream()
                .map(digits -> new AlgorithmQuestion(
                        digits,
                        statements.stream()
                                .filter(statement -> statement.digits() == digits)
                                .toList()))
                .toList();
    }

    private static AlgorithmQuestion.Statement statement(ResultSet row, int number) throws SQLException {
        String algorithm = row.getString("algorithm");
        return new AlgorithmQuestion.Statement(
                row.getLong("id"),
                row.getInt("digits"),
                algorithm == null ? null : ChecksumAlgorithm.valueOf(algorithm),
                row.getTimestamp("said_at").toInstant(),
                row.getString("display_name"));
    }

    /**
     * Says which algorithm a document's digests of some length are of, and orders the judging of the rolls that it
     * speaks of.
     *
     * @param algorithm null takes back what was said
     * @param newestSeen the newest statement about it that the person saw, or null if there was none
     * @throws Refusal if somebody else has said something meanwhile
     * @throws NotFoundException if there is nothing to be said of such digests in this document
     */
    @Transactional
    public void say(
            Membership by,
            Document document,
            int digits,
            @Nullable ChecksumAlgorithm algorithm,
            @Nullable Long newestSeen) {
        UUID production = by.productionId();
        boolean asked = document.ambiguousDigits().contains(digits);
        if (!asked
                || algorithm != null && !ChecksumAlgorithm.ofHexDigits(digits).contains(algorithm)) {
            throw new NotFoundException();
        }
        lock(document);
        Long newest = jdbc.sql(
                        "select max(id) from verification_algorithm_statement where document_id = ? and digits = ?")
                .params(document.id(), digits)
                .query(Long.class)
                .optional()
                .orElse(null);
        if (!Objects.equals(newest, newestSeen)) {
            throw new Refusal("verification.refused.algorithm-said-meanwhile", document.fileName());
        }
        jdbc.sql("""
                        insert into verification_algorithm_statement (production_id, document_id, digits, algorithm, said_at, said_by)
                        values (?, ?, ?, ?, ?, ?)
                        """)
                .param(production)
                .param(document.id())
                .param(digits)
                .param(algorithm == null ? null : algorithm.name())
                .param(Timestamp.from(clock.instant()))
                .param(by.personId())
                .update();
        String action = algorithm == null ? "document.algorithm-taken-back" : "document.algorithm-said";
        trail.add(by.act(action, "document", document.fileName(), algorithm == null ? "" : algorithm.label()));
        rollsOf(document.id()).forEach(roll -> RollJudging.order(jobs, clock, production, roll));
    }

    private void lock(Document document) {
        jdbc.sql("select document_id from verification_reading where document_id = ? for update")
                .param(document.id())
                .query(UUID.class)
                .single();
    }

    private List<UUID> rollsOf(UUID documentId) {
        return jdbc.sql("""
                        select distinct a.roll_id from verification_assignment a join verification_part p on p.id = a.part_id
                        where p.document_id = ? and a.roll_id is not null
                          and not exists (select 1 from verification_assignment later where later.replaces = a.id)
                        """).param(documentId).query(UUID.class).list();
    }
}
